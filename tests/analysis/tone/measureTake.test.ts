import { describe, expect, it } from 'vitest';
import { type MeasureOptions, measureTake } from '../../../src/analysis/tone/measureTake.ts';
import { hzToCents } from '../../../src/piano/cents.ts';
import { midiToHz } from '../../../src/piano/note.ts';
import type { NoteReading } from '../../../src/piano/reading.ts';
import { seededRandom } from '../../support/seededRandom.ts';
import { measured, RATE_HZ, readingOf, type TakeSpec, takeOf } from '../takes.ts';

const A3: TakeSpec = { strings: [{ midi: 57, offsetCents: -6 }], snrDb: 40, partialCount: 8 } as TakeSpec;
const USUAL: MeasureOptions = { pitchStandardHz: 440, stringPosition: 0 };
const cents = (a: number, b: number) => Math.abs(hzToCents(a, b));

/** All frequencies, decays, beats and judgements; no levels and no times of day. */
function withoutLevels(reading: NoteReading) {
  const { partials, quality, onsetS, ...rest } = reading;
  return {
    ...rest,
    faults: quality.faults,
    partials: partials.map(({ levelDbfs, components, ...partial }) => ({
      ...partial,
      components: components.map(({ levelDbfs: _, ...part }) => part),
    })),
  };
}

/** The same numbers to nine digits. */
function expectSame(actual: unknown, expected: unknown): void {
  const rounded = (value: unknown) =>
    JSON.parse(JSON.stringify(value, (_, x) => (typeof x === 'number' ? Number(x.toPrecision(9)) : x)));
  expect(rounded(actual)).toEqual(rounded(expected));
}

describe('a reading', () => {
  it('names the note, its pitch against the standard and the string it was told', () => {
    const { reading, truth } = measured(A3, { stringPosition: 2 });
    expect(reading).toMatchObject({ midi: 57, stringPosition: 2, pitchStandardHz: 440, partial1Source: 'measured' });
    expect(Math.abs(reading.offsetCents + 6)).toBeLessThan(0.01);
    // Equal temperament of ISO 16: A3 = 220 Hz.
    expect(reading.offsetCents).toBeCloseTo(hzToCents(reading.partial1Hz, 220), 9);
    expect(reading.f0Hz! * Math.sqrt(1 + reading.inharmonicityB!)).toBeCloseTo(truth.strings[0]!.partialHz[0]!, 3);
    expect(Math.abs(reading.onsetS - truth.onsetS)).toBeLessThan(0.02);
    expect(reading.quality).toMatchObject({ isUsable: true, isClipped: false, faults: [] });
  });

  it('counts cents from the standard given', () => {
    const { samples } = takeOf(A3);
    const [at440, at435] = [440, 435].map((pitchStandardHz) => readingOf(samples, RATE_HZ, { pitchStandardHz }));
    // The search begins elsewhere, the pitch found is the same.
    expect(at435!.partial1Hz).toBeCloseTo(at440!.partial1Hz, 4);
    // 440 stands 19.786 cents above 435.
    expect(at435!.offsetCents - at440!.offsetCents).toBeCloseTo(19.786, 3);
  });

  it('states levels against a full-scale sine, and the decay of each partial', () => {
    const { reading, truth } = measured({ strings: [{ midi: 69, partialCount: 5 }], snrDb: 50 });
    expect(reading.partials).toHaveLength(5);
    for (const partial of reading.partials) {
      const { amplitudes, decayTimeS } = truth.strings[0]!;
      const i = partial.partialNumber - 1;
      // Six periods after the strike, where the analysis begins.
      const fallDb = (60 / decayTimeS[i]!) * (6 / 440);
      expect(partial.levelDbfs).toBeCloseTo(20 * Math.log10(truth.scale * amplitudes[i]!) - fallDb, 0);
      expect(partial.promptDecayTimeS! / decayTimeS[i]!).toBeCloseTo(1, 1);
      expect(partial.afterDecayTimeS).toBeNull();
    }
  });

  it('states signal to noise in the first half second', () => {
    for (const snrDb of [15, 35]) {
      expect(Math.abs(measured({ ...A3, snrDb }).reading.quality.snrDb - snrDb)).toBeLessThan(2);
    }
  });

  it('measures the note that it is given, and says so where another sounds', () => {
    const { samples } = takeOf(A3);
    const reading = readingOf(samples, RATE_HZ, { midi: 69 });
    expect(reading.midi).toBe(69);
    expect(reading.quality.faults).toContain('wrong-note');
    expect(readingOf(samples, RATE_HZ, { midi: 57 }).quality.faults).toEqual([]);
  });

  it('is not swayed by a wrong expectation', () => {
    const { samples } = takeOf(A3);
    for (const expectedMidi of [56, 58, 69]) expect(readingOf(samples, RATE_HZ, { expectedMidi }).midi).toBe(57);
  });
});

describe('what must not change a reading', () => {
  const take = takeOf(A3);
  const { onsetIndex } = take.truth;
  const reading = readingOf(take.samples, RATE_HZ, { onsetIndex });

  it.each([4, 1 / 16, 1 / 512])('the level: all samples times %s', (factor) => {
    const scaled = readingOf(
      take.samples.map((value) => value * factor),
      RATE_HZ,
      { onsetIndex },
    );
    // So soft that it is too quiet is still the same pitch.
    expectSame({ ...withoutLevels(scaled), faults: [] }, { ...withoutLevels(reading), faults: [] });
    const shiftDb = scaled.partials[0]!.levelDbfs - reading.partials[0]!.levelDbfs;
    expect(shiftDb).toBeCloseTo(20 * Math.log10(factor), 4);
  });

  it('the sign of the samples: a microphone wired the other way round', () => {
    expectSame(
      withoutLevels(
        readingOf(
          take.samples.map((value) => -value),
          RATE_HZ,
          { onsetIndex },
        ),
      ),
      withoutLevels(reading),
    );
  });

  it('when it was played: the same samples later, or told to start later', () => {
    const later = new Float32Array(take.samples.length + 5000);
    later.set(take.samples, 5000);
    const moved = readingOf(later.subarray(5000 - 1000), RATE_HZ, { onsetIndex: onsetIndex + 1000, startS: 100 });
    const plain = withoutLevels(reading);
    expect(moved.onsetS).toBeCloseTo(100 + (onsetIndex + 1000) / RATE_HZ, 9);
    expect(cents(moved.partial1Hz, reading.partial1Hz)).toBeLessThan(1e-6);
    expectSame({ ...withoutLevels(moved), snr: 0 }, { ...plain, snr: 0 });
  });

  it('a constant offset of the converter', () => {
    const offset = readingOf(
      take.samples.map((value) => value + 0.05),
      RATE_HZ,
      { onsetIndex },
    );
    expect(cents(offset.partial1Hz, reading.partial1Hz)).toBeLessThan(0.002);
    expect(offset.inharmonicityB! / reading.inharmonicityB!).toBeCloseTo(1, 4);
    expect(offset.quality.faults).toEqual([]);
  });

  it('digital zeros before and after', () => {
    const padded = new Float32Array(take.samples.length + 3 * RATE_HZ);
    padded.set(take.samples, RATE_HZ);
    const found = readingOf(padded, RATE_HZ);
    expect(found.midi).toBe(57);
    expect(cents(found.partial1Hz, reading.partial1Hz)).toBeLessThan(0.005);
    expect(found.quality.faults).toEqual([]);
  });

  it('24-bit recording at −60 dBFS', () => {
    const clean = takeOf({ strings: [{ midi: 57, offsetCents: -6 }], peak: 1e-3 });
    const coarse = clean.samples.map((value) => Math.round(value * 2 ** 23) / 2 ** 23);
    const found = readingOf(coarse, RATE_HZ, { onsetIndex: clean.truth.onsetIndex });
    expect(cents(found.partial1Hz, clean.truth.strings[0]!.partialHz[0]!)).toBeLessThan(0.001);
    expect(found.quality.isUsable).toBe(true);
  });

  it('the sampling rate: 22.05, 44.1, 48 and 96 kHz agree within 0.02 cents', () => {
    for (const midi of [36, 69, 96]) {
      const pitches = [22050, 44100, 48000, 96000].map((sampleRateHz) => {
        const { reading: found } = measured({
          strings: [{ midi, partialCount: 6 }],
          sampleRateHz,
          durationS: 1.5,
          leadS: 0.4,
        });
        return found.offsetCents;
      });
      expect(Math.max(...pitches) - Math.min(...pitches)).toBeLessThan(0.02);
    }
  });
});

describe('no reading, and why', () => {
  const reasonOf = (samples: Float32Array, options: Partial<MeasureOptions> = {}) => {
    const outcome = measureTake(samples, RATE_HZ, { ...USUAL, ...options });
    expect(outcome.found ? '' : outcome.detail).not.toBe(outcome.found ? 'found' : '');
    return outcome.found ? `found ${outcome.reading.midi} ${outcome.reading.quality.faults}` : outcome.reason;
  };
  const noise = (seed: number, rms: number, durationS = 2) => {
    const { normal } = seededRandom(seed);
    return Float32Array.from({ length: durationS * RATE_HZ }, () => rms * normal());
  };

  it('silence', () => {
    expect(reasonOf(new Float32Array(RATE_HZ))).toBe('silence');
    expect(reasonOf(new Float32Array(0))).toBe('silence');
  });

  it.each([1, 2, 3, 4, 5, 6])('noise alone holds no pitch (%s)', (seed) => {
    expect(reasonOf(noise(seed, 0.05))).toBe('no-pitch');
    expect(reasonOf(noise(seed, 0.05), { midi: 57 })).toBe('no-pitch');
  });

  it('too short', () => {
    const { samples, truth } = takeOf(A3);
    const cut = samples.subarray(0, truth.onsetIndex + Math.round(0.1 * RATE_HZ));
    expect(reasonOf(cut, { onsetIndex: truth.onsetIndex })).toBe('too-short');
    expect(reasonOf(new Float32Array(500).fill(0.1))).toBe('too-short');
  });

  it('says too short of what is long enough to name but not to trust', () => {
    const { samples, truth } = takeOf({ strings: [{ midi: 33 }], snrDb: 40 });
    const cut = samples.subarray(0, truth.onsetIndex + Math.round(0.34 * RATE_HZ));
    expect(readingOf(cut, RATE_HZ, { onsetIndex: truth.onsetIndex, midi: 33 }).quality.faults).toContain('too-short');
  });
});

describe('misuse throws a RangeError that names the argument', () => {
  const samples = takeOf({ strings: [{ midi: 69 }], durationS: 0.6 }).samples;

  it.each([0, -44100, Number.NaN, Infinity, 100])('sampleRateHz %s', (sampleRateHz) => {
    expect(() => measureTake(samples, sampleRateHz, USUAL)).toThrow(RangeError);
    expect(() => measureTake(samples, sampleRateHz, USUAL)).toThrow(/sampleRateHz.*got/);
  });

  it.each([
    ['pitchStandardHz', 0],
    ['pitchStandardHz', Number.NaN],
    ['pitchStandardHz', 4400],
  ] as const)('%s %s', (name, value) => {
    expect(() => measureTake(samples, RATE_HZ, { ...USUAL, [name]: value })).toThrow(RangeError);
    expect(() => measureTake(samples, RATE_HZ, { ...USUAL, [name]: value })).toThrow(new RegExp(`${name}.*got`));
  });

  it.each([
    ['midi', 200],
    ['midi', 60.5],
    ['midi', Number.NaN],
    ['onsetIndex', -1],
    ['onsetIndex', Number.NaN],
    ['onsetIndex', 1e9],
    ['startS', Number.NaN],
  ] as const)('%s %s', (name, value) => {
    expect(() => measureTake(samples, RATE_HZ, { ...USUAL, [name]: value })).toThrow(RangeError);
    expect(() => measureTake(samples, RATE_HZ, { ...USUAL, [name]: value })).toThrow(new RegExp(`${name}.*got`));
  });

  it('keeps to the nominal pitch of every note of an 88-note piano', () => {
    for (const midi of [21, 108]) {
      const reading = readingOf(takeOf({ strings: [{ midi }], durationS: 1.2 }).samples, RATE_HZ, { midi });
      expect(reading.offsetCents).toBeCloseTo(hzToCents(reading.partial1Hz, midiToHz(midi, 440)), 9);
    }
  });
});
