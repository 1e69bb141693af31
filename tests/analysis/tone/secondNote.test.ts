import { describe, expect, it } from 'vitest';
import { findNote } from '../../../src/analysis/tone/findNote.ts';
import { hasSecondNote, leftOver } from '../../../src/analysis/tone/secondNote.ts';
import { partialHz, typicalInharmonicity } from '../../../src/analysis/tone/typicalInharmonicity.ts';
import { midiToHz } from '../../../src/piano/note.ts';
import { partialOf } from '../partialFits.ts';
import { takeOf } from '../takes.ts';

const combOf = (midi: number) => {
  const inharmonicityB = typicalInharmonicity(midi);
  return { f0Hz: midiToHz(midi, 440) / Math.sqrt(1 + inharmonicityB), inharmonicityB };
};
const peaksOf = (midi: number, count: number, levelDbfs = -20) =>
  Array.from({ length: count }, (_, i) => ({
    hz: partialHz(combOf(midi).f0Hz, combOf(midi).inharmonicityB, i + 1),
    levelDbfs: levelDbfs - 2 * i,
    snrDb: 50 - 2 * i,
  }));

describe('leftOver', () => {
  it('is nothing where one note sounds', () => {
    expect(leftOver(peaksOf(57, 12), 57, combOf(57), 0.8)).toEqual({ share: 0, secondScore: 0, secondMidi: null });
  });

  it.each([58, 61, 64, 66, 50])('is the second note’s: A3 with MIDI %s', (midi) => {
    const left = leftOver([...peaksOf(57, 12), ...peaksOf(midi, 12)], 57, combOf(57), 0.8);
    expect(left.secondMidi).toBe(midi);
    expect(left.secondScore).toBeGreaterThan(0.6);
    expect(left.share).toBeGreaterThan(0.15);
  });

  it('leaves next to nothing where only faint strays are left', () => {
    const stray = [301.7, 517.3, 1290.4].map((hz) => ({ hz, levelDbfs: -60, snrDb: 20 }));
    const peaks = [...peaksOf(57, 12), ...stray];
    expect(leftOver(peaks, 57, combOf(57), 0.8).share).toBeLessThan(0.1);
    expect(hasSecondNote(peaks, 57, combOf(57), 0.8, [])).toBe(false);
  });
});

describe('hasSecondNote', () => {
  const single = (n: number) => partialOf(n, [{ hz: 220 * n, amplitude: 0.1 }]);
  const double = (n: number) =>
    partialOf(n, [
      { hz: 220 * n, amplitude: 0.1 },
      { hz: 220 * n + 1, amplitude: 0.06 },
    ]);
  const judge = (isDouble: (n: number) => boolean) =>
    hasSecondNote(
      peaksOf(57, 12),
      57,
      combOf(57),
      0.8,
      [1, 2, 3, 4, 5, 6, 7, 8, 9].map((n) => (isDouble(n) ? double(n) : single(n))),
    );

  it('hears an octave or a twelfth behind every second or third partial', () => {
    expect(judge((n) => n % 2 === 0)).toBe(true);
    expect(judge((n) => n % 3 === 0)).toBe(true);
  });

  it('hears none behind a false beat or a mistuned unison', () => {
    expect(judge(() => false)).toBe(false);
    expect(judge(() => true)).toBe(false);
    expect(judge((n) => n === 2)).toBe(false);
    expect(judge((n) => n === 2 || n === 3)).toBe(false);
  });
});

describe('in sound', () => {
  function judge(midis: readonly number[], seed = 1) {
    const takes = midis.map((midi, i) =>
      takeOf({ strings: [{ midi }], durationS: 1.5, peak: 0.35, snrDb: 40, seed: seed + i }),
    );
    const samples = takes[0]!.samples.map((_, i) => takes.reduce((sum, take) => sum + take.samples[i]!, 0));
    const bounds = { samples, sampleRateHz: 22050, onsetIndex: takes[0]!.truth.onsetIndex, endIndex: samples.length };
    const { candidates, peaks, resolutionHz } = findNote({ ...bounds, pitchStandardHz: 440 });
    return hasSecondNote(peaks, candidates[0]!.midi, candidates[0]!, resolutionHz, []);
  }

  it.each([[[40, 44]], [[48, 49]], [[57, 64]], [[60, 67]], [[69, 70]], [[52, 76]], [[81, 85]]])(
    'two notes at once are two: %s',
    (pair) => {
      expect(judge(pair)).toBe(true);
    },
  );

  it.each([24, 33, 45, 57, 69, 81, 93, 104])('one note is one: MIDI %s', (midi) => expect(judge([midi])).toBe(false));

  it('two strings 12 cents apart are one note still', () => {
    const strings = [{ midi: 60 }, { midi: 60, offsetCents: 12 }];
    const { samples, truth } = takeOf({ strings, durationS: 1.5, snrDb: 40 });
    const bounds = { samples, sampleRateHz: 22050, onsetIndex: truth.onsetIndex, endIndex: samples.length };
    const { candidates, peaks, resolutionHz } = findNote({ ...bounds, pitchStandardHz: 440 });
    expect(hasSecondNote(peaks, 60, candidates[0]!, resolutionHz, [])).toBe(false);
  });
});
