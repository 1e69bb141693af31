import { describe, expect, it } from 'vitest';
import { findNote, nearerName, offsetCentsOf } from '../../../src/analysis/tone/findNote.ts';
import { midiToName } from '../../../src/piano/note.ts';
import { typicalB } from '../../support/typicalPiano.ts';
import { RATE_HZ, type TakeSpec, takeOf } from '../takes.ts';

function search(spec: TakeSpec, hints: { midi?: number; expectedMidi?: number; pitchStandardHz?: number } = {}) {
  const { samples, truth, sampleRateHz } = takeOf({ durationS: 1.3, ...spec });
  const request = { samples, sampleRateHz, onsetIndex: truth.onsetIndex, endIndex: samples.length };
  return findNote({ pitchStandardHz: 440, ...request, ...hints });
}

const named = (...args: Parameters<typeof search>) => midiToName(search(...args).candidates[0]!.midi);

/** Every fifth semitone meets all twelve pitch classes on the way up; both ends of the compass besides. */
const NOTES = [...Array.from({ length: 18 }, (_, i) => 21 + 5 * i), 22, 24, 103, 107, 108];

describe('findNote', () => {
  it.each(NOTES.map((midi) => ({ midi, name: midiToName(midi) })))('names $name in noise', ({ midi, name }) => {
    expect(named({ strings: [{ midi }], snrDb: 20, seed: midi })).toBe(name);
  });

  it.each([
    { midi: 28, offsetCents: -42 },
    { midi: 45, offsetCents: 40 },
    { midi: 66, offsetCents: -45 },
    { midi: 88, offsetCents: 45 },
    { midi: 104, offsetCents: 45 },
    { midi: 107, offsetCents: -47 },
  ])('names MIDI $midi $offsetCents cents off, and how far off', ({ midi, offsetCents }) => {
    const [best] = search({ strings: [{ midi, offsetCents }], snrDb: 30, seed: midi }).candidates;
    expect(best!.midi).toBe(midi);
    expect(Math.abs(offsetCentsOf(best!, 440) - offsetCents)).toBeLessThan(8);
  });

  it.each([
    { midi: 24, factor: 0.35 },
    { midi: 24, factor: 2.2 },
    { midi: 60, factor: 0.5 },
    { midi: 60, factor: 1.8 },
    { midi: 96, factor: 0.7 },
    { midi: 96, factor: 1.5 },
  ])('names MIDI $midi with $factor times the usual inharmonicity', ({ midi, factor }) => {
    expect(named({ strings: [{ midi, inharmonicityB: factor * typicalB(midi) }], snrDb: 25, seed: 4 })).toBe(
      midiToName(midi),
    );
  });

  it('names a piano that stands at another pitch by its own standard', () => {
    for (const pitchStandardHz of [415, 435, 457]) {
      expect(named({ strings: [{ midi: 57, pitchStandardHz }], snrDb: 30 }, { pitchStandardHz })).toBe('A3');
    }
  });

  it.each([-12, -1, 1, 12])('keeps to what sounds where the note %s semitones away was expected', (away) => {
    for (const midi of [33, 57, 81]) {
      expect(named({ strings: [{ midi }], snrDb: 25, seed: midi }, { expectedMidi: midi + away })).toBe(
        midiToName(midi),
      );
    }
  });

  it('puts the given note first, and the one that sounds after it', () => {
    const { candidates } = search({ strings: [{ midi: 57 }], snrDb: 30 }, { midi: 60 });
    expect(candidates.slice(0, 2).map((candidate) => candidate.midi)).toEqual([60, 57]);
    expect(candidates[1]!.score).toBeGreaterThan(1.5 * candidates[0]!.score);
  });

  it('leaves out what rang before the strike', () => {
    const ringing = takeOf({ strings: [{ midi: 64 }], durationS: 2.5, leadS: 0.1, peak: 0.25 }).samples;
    const struck = takeOf({ strings: [{ midi: 53 }], durationS: 2.5, leadS: 1, peak: 0.5, seed: 2 });
    const samples = ringing.map((value, i) => value + struck.samples[i]!);
    const request = { samples, sampleRateHz: RATE_HZ, onsetIndex: struck.truth.onsetIndex, endIndex: samples.length };
    const found = findNote({ ...request, pitchStandardHz: 440 });
    expect(found.candidates[0]!.midi).toBe(53);
    // E4's first partial, 329.63 Hz (ISO 16).
    expect(found.peaks.some((peak) => Math.abs(peak.hz - 329.63) < 2)).toBe(false);
  });

  it('lists one candidate a note, best first', () => {
    const { candidates } = search({ strings: [{ midi: 60 }], snrDb: 30 });
    expect(new Set(candidates.map((candidate) => candidate.midi)).size).toBe(88);
    const scores = candidates.map((candidate) => candidate.score);
    expect([...scores].sort((a, b) => b - a)).toEqual(scores);
  });
});

describe('nearerName', () => {
  it.each([
    { midi: 60, offsetCents: 40, name: 60 },
    { midi: 60, offsetCents: 60, name: 61 },
    { midi: 60, offsetCents: -60, name: 59 },
  ])('takes $midi at $offsetCents cents for $name', ({ midi, offsetCents, name }) => {
    expect(nearerName(midi, offsetCents)).toBe(name);
  });

  it('leans to where tuned pianos stand at the ends of the compass', () => {
    // 53 cents above B7 are 47 below C8, but the top octave is stretched upwards: B7 is the less unusual.
    expect(nearerName(107, 53)).toBe(107);
    expect(nearerName(107, 65)).toBe(108);
    // A0 is tuned flat.
    expect(nearerName(22, -53)).toBe(22);
    expect(nearerName(22, -65)).toBe(21);
  });

  it('leaves the first and the last note of the compass what they are, however far off', () => {
    expect(nearerName(21, -90)).toBe(21);
    expect(nearerName(108, 95)).toBe(108);
  });
});
