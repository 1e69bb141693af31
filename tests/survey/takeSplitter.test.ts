import { describe, expect, it } from 'vitest';
import { createTakeSplitter } from '../../src/survey/takeSplitter.ts';
import { addBurst, addHum } from '../support/roomNoise.ts';
import { seededRandom } from '../support/seededRandom.ts';
import { synthesizeNote } from '../support/syntheticString.ts';
import { synthesizeSurvey } from '../support/syntheticSurvey.ts';
import { makeScene, type SceneOptions } from './scene.ts';
import { countStrikes, splitAll, strikeOf } from './splitScene.ts';

const RATE = 22050;
const PLAIN: SceneOptions = { seed: 1, sampleRateHz: RATE, step: 5, snrDb: 20 };

// Levels of neighbouring notes lie up to 20 dB apart in all of them, and the noise is counted from the softest note.
const CASES: Record<string, SceneOptions> = {
  'with and without silence between': PLAIN,
  'no silence between': { ...PLAIN, seed: 2, gapS: [0, 0] },
  'no noise at all': { sampleRateHz: RATE, seed: 3, step: 5 },
  'noise 15 dB down, and hum': { ...PLAIN, seed: 4, snrDb: 15, hum: { hz: 50, levelDb: -45 } },
  'pink noise, hum at 60 Hz': { ...PLAIN, seed: 5, pinkNoise: true, hum: { hz: 60, levelDb: -50 } },
  'pedal held, all ringing on': { ...PLAIN, seed: 6, isPedalHeld: true, holdS: [1.5, 3] },
  'unisons out of tune': { ...PLAIN, seed: 7, unisonSpreadCents: 12, hammerNoiseDb: -20 },
  'deep false beats on every partial': { ...PLAIN, seed: 8, falseBeatShare: 1 },
  'a knock in every note, and dampers that are heard': {
    ...PLAIN,
    seed: 9,
    knockShare: 1,
    releaseNoiseDb: -25,
    hammerNoiseDb: -20,
    holdS: [1.5, 3],
  },
  'knocks without noise to hide in': { sampleRateHz: RATE, seed: 10, step: 5, knockShare: 1, releaseNoiseDb: -20 },
  'each note three times': { ...PLAIN, seed: 11, step: 10, repeatEach: 3, levelRangeDb: 6, gapS: [0.1, 0.5] },
  'semitones in the bass': { ...PLAIN, seed: 12, step: 1, toMidi: 32 },
  'semitones at the top': { ...PLAIN, seed: 13, step: 1, fromMidi: 96, sampleRateHz: 44100 },
  'long notes': { ...PLAIN, seed: 14, step: 12, holdS: [5, 9] },
  '44.1 kHz': { ...PLAIN, seed: 15, step: 9, sampleRateHz: 44100 },
  '96 kHz': { ...PLAIN, seed: 16, step: 13, sampleRateHz: 96000 },
  '192 kHz': { ...PLAIN, seed: 17, step: 21, sampleRateHz: 192000 },
};

describe('strikes', () => {
  it.each(Object.entries(CASES))('are all found and none is invented: %s', (_, options) => {
    const scene = makeScene(options);
    const count = countStrikes(scene, splitAll(scene.samples, scene.sampleRateHz));
    expect(count).toMatchObject({ foundCount: count.playedCount, inventedCount: 0 });
    // 5 ms is what a take's measuring wants; a damper's noise or a knock just before a strike may bring it forward.
    const sorted = [...count.onsetErrorsMs].sort((a, b) => a - b);
    expect(sorted.at(-1)).toBeLessThan(10);
    expect(Math.abs(sorted[sorted.length >> 1]!)).toBeLessThan(3);
  });
});

describe('a loud damper just before a soft strike', () => {
  const play = (gapS: number, peak: number) => {
    const { samples, truth } = synthesizeSurvey({
      notes: [
        { strings: [{ midi: 33 }], holdS: 2, peak: 0.4 },
        { strings: [{ midi: 34 }], holdS: 2, peak: 0.03 },
      ],
      sampleRateHz: RATE,
      gapS,
      noiseDbfs: -60,
      seed: 18,
    });
    const sound = Float64Array.from(samples);
    const startIndex = truth[1]!.onsetIndex - Math.round(gapS * RATE);
    addBurst(sound, RATE, { startIndex, peak, fadeS: 0.012, cornerHz: 900 }, seededRandom(19));
    const strikes = splitAll(Float32Array.from(sound), RATE).map(strikeOf);
    return { strikes, truth: truth.map(({ onsetIndex }) => onsetIndex) };
  };

  it.each([
    [0.06, 0.1],
    [0.09, 0.02],
    [0.12, 0.2],
    [0.15, 0.2],
    [0.2, 0.2],
    [0.3, 0.2],
  ])('neither hides it nor stands in for it: %d s, peak %d', (gapS, peak) => {
    const { strikes, truth } = play(gapS, peak);
    expect(strikes).toHaveLength(2);
    for (const [index, strike] of strikes.entries()) expect(Math.abs(strike - truth[index]!)).toBeLessThan(0.01 * RATE);
  });
});

describe('the way the stream is cut into blocks', () => {
  const scene = makeScene({ ...PLAIN, seed: 21, step: 22 });
  const whole = splitAll(scene.samples, RATE);

  it.each([77, 2048, 100_000])('changes nothing: %d samples at a time', (blockLength) => {
    expect(splitAll(scene.samples, RATE, blockLength)).toEqual(whole);
  });

  it('changes nothing: one sample at a time', () => {
    const short = scene.samples.subarray(0, 4 * RATE);
    expect(splitAll(short, RATE, 1)).toEqual(splitAll(short, RATE));
  });

  it('changes nothing at 96 kHz, where the rate is reduced first', () => {
    const { samples } = makeScene({ ...PLAIN, seed: 22, fromMidi: 60, toMidi: 61, sampleRateHz: 96000 });
    expect(splitAll(samples, 96000, 4096)).toEqual(splitAll(samples, 96000));
  });
});

describe('a take', () => {
  const scene = makeScene({ ...PLAIN, seed: 23, fromMidi: 50, toMidi: 56, step: 2, gapS: [0, 0], holdS: [1.2, 1.2] });
  const segments = splitAll(scene.samples, RATE);

  it('holds the stream as it was', () => {
    expect(segments).toHaveLength(4);
    for (const { samples, startSample } of segments)
      expect(samples).toEqual(scene.samples.slice(startSample, startSample + samples.length));
  });

  it('begins 0.3 s before its strike, and ends at the next one', () => {
    expect(segments).toHaveLength(4);
    for (const [index, segment] of segments.entries()) {
      expect(segment.onsetIndex).toBe(Math.round(0.3 * RATE));
      const next = segments[index + 1];
      if (!next) continue;
      expect(segment.endedBy).toBe('next-strike');
      expect(segment.startSample + segment.samples.length).toBe(strikeOf(next));
    }
  });
});

describe('a take that still sounds', () => {
  const scene = makeScene({ ...PLAIN, seed: 24, fromMidi: 50, toMidi: 56, step: 3, gapS: [0, 1.5], holdS: [1.2, 3] });
  const segments = splitAll(scene.samples, RATE);
  /** What sounds when so much was heard. */
  const soundingAt = (heardCount: number, blockLength: number) => {
    const splitter = createTakeSplitter(RATE);
    let ended = 0;
    for (let start = 0; start < heardCount; start += blockLength)
      ended += splitter.push(scene.samples.subarray(start, Math.min(heardCount, start + blockLength))).length;
    const sounding = splitter.sounding();
    return { ended, sounding: sounding && { ...sounding, samples: sounding.samples.slice() } };
  };

  it('begins where its segment will, and holds the stream up to now', () => {
    expect(segments).toHaveLength(3);
    for (const [index, { startSample, onsetIndex }] of segments.entries()) {
      const heardCount = startSample + onsetIndex + RATE;
      const { ended, sounding } = soundingAt(heardCount, 1000);
      expect(ended).toBe(index);
      expect(sounding).toEqual({ samples: scene.samples.slice(startSample, heardCount), startSample, onsetIndex });
    }
  });

  it('does not depend on how the stream was cut into blocks', () => {
    for (const heardCount of [RATE, 1.7 * RATE, 2.45 * RATE, 5 * RATE, scene.samples.length])
      for (const blockLength of [77, 2048]) {
        expect(soundingAt(heardCount, blockLength)).toEqual(soundingAt(heardCount, heardCount));
      }
  });

  it('is none before the first strike, between takes and after the end', () => {
    const { samples } = synthesizeNote({
      strings: [{ midi: 60 }],
      durationS: 5,
      sampleRateHz: RATE,
      leadS: 1,
      releaseAtS: 1.5,
      snrDb: 40,
      seed: 25,
    });
    const splitter = createTakeSplitter(RATE);
    const sounds = [1, 1.3, 1.9].map((untilS, index, all) => {
      splitter.push(samples.subarray((all[index - 1] ?? 0) * RATE, untilS * RATE));
      return splitter.sounding() !== null;
    });
    expect(sounds).toEqual([false, false, true]);
    splitter.push(samples.subarray(1.9 * RATE));
    expect(splitter.sounding()).toBeNull();
    splitter.finish();
    expect(splitter.sounding()).toBeNull();
  });
});

describe('the end of a take', () => {
  const note = (midi: number, durationS: number, more = {}) =>
    synthesizeNote({ strings: [{ midi }], durationS, sampleRateHz: RATE, leadS: 0.5, snrDb: 40, seed: 31, ...more });

  it('is where the tone has sunk into the noise', () => {
    const [segment, ...others] = splitAll(note(96, 6).samples, RATE);
    expect(others).toEqual([]);
    expect(segment?.endedBy).toBe('decay');
    // C7 falls 60 dB in 0.9 s; in a bin it stands some 30 dB higher above the noise than the 40 dB over all.
    const lastedS = (segment!.samples.length - segment!.onsetIndex) / RATE;
    expect(lastedS).toBeGreaterThan(0.6);
    expect(lastedS).toBeLessThan(1.6);
  });

  it('is where the damper has fallen', () => {
    const [segment] = splitAll(note(50, 6, { releaseAtS: 2 }).samples, RATE);
    const lastedS = (segment!.samples.length - segment!.onsetIndex) / RATE;
    expect(segment?.endedBy).toBe('decay');
    expect(lastedS).toBeGreaterThan(2);
    expect(lastedS).toBeLessThan(2.8);
  });

  it.each([33, 45, 57])('is not put off by a cough after the damper: MIDI %d', (midi) => {
    for (const atS of [2.5, 2.53, 2.56]) {
      const { samples } = note(midi, 5, { releaseAtS: 2 });
      const sound = Float64Array.from(samples);
      const cough = { startIndex: Math.round((0.5 + atS) * RATE), peak: 0.25, fadeS: 0.07, cornerHz: 1400 };
      addBurst(sound, RATE, cough, seededRandom(midi));
      const [segment] = splitAll(Float32Array.from(sound), RATE);
      expect((segment!.samples.length - segment!.onsetIndex) / RATE).toBeLessThan(atS);
    }
  });

  it('comes after the troughs of a deep slow beat', () => {
    const strings = [{ midi: 45 }, { midi: 45, offsetCents: 12 }];
    const [segment] = splitAll(note(45, 8, { strings, snrDb: 30 }).samples, RATE);
    expect(segment!.samples.length / RATE).toBeGreaterThan(7);
  });

  it('is 20 s after the strike at the latest', () => {
    const segments = splitAll(note(21, 26, { snrDb: 60 }).samples, RATE);
    expect(segments.map(({ endedBy }) => endedBy)).toEqual(['longest']);
    expect(segments[0]!.samples.length - segments[0]!.onsetIndex).toBe(20 * RATE);
  });

  it('is the end of the recording where the tone still sounds', () => {
    const { samples } = note(48, 3);
    const [segment] = splitAll(samples, RATE);
    expect(segment?.endedBy).toBe('end-of-recording');
    expect(segment!.startSample + segment!.samples.length).toBe(samples.length);
  });

  it('is not put off by hum', () => {
    const { samples } = note(84, 8, { snrDb: 30, hum: { hz: 50, levelDb: -45 }, leadS: 1.5 });
    const segments = splitAll(samples, RATE);
    expect(segments.map(({ endedBy }) => endedBy)).toEqual(['decay']);
  });
});

describe('the beginning of a recording', () => {
  it('may be a strike', () => {
    const { samples } = synthesizeNote({
      strings: [{ midi: 57 }],
      durationS: 2,
      sampleRateHz: RATE,
      leadS: 0,
      snrDb: 30,
      seed: 41,
    });
    const [segment] = splitAll(samples, RATE);
    expect(segment).toMatchObject({ startSample: 0 });
    expect(segment!.onsetIndex).toBeLessThan(0.005 * RATE);
  });

  it.each([21, 31, 60, 90])('may lie in the middle of a note (MIDI %d)', (midi) => {
    const { samples } = synthesizeNote({
      strings: [{ midi }],
      durationS: 4,
      sampleRateHz: RATE,
      leadS: 0,
      snrDb: 40,
      seed: 42,
    });
    const segments = splitAll(samples.subarray(0.2 * RATE), RATE);
    expect(segments).toHaveLength(1);
    expect(segments[0]).toMatchObject({ startSample: 0 });
  });

  it('may be digital silence, and so may the end', () => {
    const { samples } = synthesizeNote({
      strings: [{ midi: 45 }],
      durationS: 2,
      sampleRateHz: RATE,
      leadS: 0,
      seed: 43,
    });
    const padded = new Float32Array(6 * RATE);
    padded.set(samples, 2 * RATE);
    const splitter = createTakeSplitter(RATE);
    const segments = [...splitter.push(padded), ...splitter.finish()];
    expect(segments).toHaveLength(1);
    expect(Math.abs(strikeOf(segments[0]!) - 2 * RATE)).toBeLessThan(0.01 * RATE);
    expect(splitter.roomLevelDbfs()).toBeNull();
  });
});

describe('what is no note', () => {
  const roomWith = (add: (sound: Float64Array) => void, durationS = 4) => {
    const random = seededRandom(51);
    const sound = Float64Array.from({ length: durationS * RATE }, () => 10 ** (-50 / 20) * random.normal());
    add(sound);
    return Float32Array.from(sound);
  };
  const knock = (sound: Float64Array) => {
    for (const atS of [0.8, 1.5, 1.6, 2.9])
      addBurst(sound, RATE, { startIndex: atS * RATE, peak: 0.5, fadeS: 0.01, cornerHz: 1500 }, seededRandom(52));
  };
  const grow = (sound: Float64Array) => {
    for (let index = 0; index < sound.length; index++) sound[index]! *= 1 + (4 * index) / sound.length;
  };

  it.each<[string, (sound: Float64Array) => void]>([
    ['noise', () => undefined],
    ['noise after digital silence', (sound) => sound.fill(0, 0, 1.7 * RATE)],
    ['hum from the beginning', (sound) => addHum(sound, RATE, { hz: 60, levelDb: -30 }, seededRandom(53))],
    ['knocks', knock],
    ['noise that grows', grow],
  ])('gives no take: %s', (_, add) => {
    expect(splitAll(roomWith(add, 10), RATE)).toEqual([]);
  });

  it('comes out as a take where it sings, as speech does', () => {
    const voice = (sound: Float64Array) => {
      for (let index = RATE; index < 1.6 * RATE; index++)
        for (let order = 1; order < 20; order++)
          sound[index]! +=
            (0.05 / order) * Math.sin((2 * Math.PI * order * 130 * index) / RATE + 8 * Math.sin(index / 900));
    };
    expect(splitAll(roomWith(voice), RATE).length).toBeGreaterThan(0);
  });
});

describe('a hole', () => {
  it('between two takes marks neither', () => {
    const options = {
      ...PLAIN,
      seed: 62,
      fromMidi: 70,
      toMidi: 72,
      step: 2,
      gapS: [1.5, 1.5],
      holdS: [1.2, 1.2],
    } as const;
    const scene = makeScene(options);
    const at = scene.notes[1]!.onsetIndex - Math.round(0.5 * RATE);
    const splitter = createTakeSplitter(RATE);
    const before = splitter.push(scene.samples.subarray(0, at));
    splitter.markHole();
    const segments = [...before, ...splitter.push(scene.samples.subarray(at)), ...splitter.finish()];
    expect(segments.map(({ hasHole }) => hasHole)).toEqual([false, false]);
  });

  it('marks the take that sounds, and no other', () => {
    const scene = makeScene({
      ...PLAIN,
      seed: 61,
      fromMidi: 50,
      toMidi: 54,
      step: 2,
      gapS: [0.2, 0.2],
      holdS: [1.5, 1.5],
    });
    const at = scene.notes[1]!.onsetIndex + RATE;
    const splitter = createTakeSplitter(RATE);
    const before = splitter.push(scene.samples.subarray(0, at));
    splitter.markHole();
    const segments = [...before, ...splitter.push(scene.samples.subarray(at + 300)), ...splitter.finish()];
    expect(segments.map(({ hasHole }) => hasHole)).toEqual([false, true, false]);
  });
});

describe('the room', () => {
  it('is learned from the gaps', () => {
    const scene = makeScene({ ...PLAIN, seed: 71, fromMidi: 60, toMidi: 64, gapS: [1.5, 2] });
    const splitter = createTakeSplitter(RATE);
    splitter.push(scene.samples);
    // White noise: the RMS of the stretch before the first note, against a full-scale sine.
    const lead = scene.samples.subarray(0, scene.notes[0]!.onsetIndex);
    const levelDbfs = 10 * Math.log10((2 * lead.reduce((sum, value) => sum + value * value, 0)) / lead.length);
    expect(Math.abs(splitter.roomLevelDbfs()! - levelDbfs)).toBeLessThan(1);
  });

  it('is not known before a gap was heard', () => {
    expect(createTakeSplitter(RATE).roomLevelDbfs()).toBeNull();
  });
});

it.each([0, -48000, Number.NaN, 1e6])('refuses a sample rate of %d', (rate) => {
  expect(() => createTakeSplitter(rate)).toThrow(/sampleRateHz/);
});
