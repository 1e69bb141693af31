import { describe, expect, it } from 'vitest';
import { hzToCents } from '../../../src/piano/cents.ts';
import { typicalDecayTimeS } from '../../support/typicalPiano.ts';
import { measured } from '../takes.ts';

/** Every sixth note of the compass. */
const NOTES = Array.from({ length: 15 }, (_, i) => 23 + 6 * i);

/** As a survey plays them: about two seconds, less where the tone is gone before. */
function survey(snrDb?: number) {
  return NOTES.map((midi) => {
    const durationS = Math.min(2.3, 0.6 + typicalDecayTimeS(midi));
    const noise = snrDb === undefined ? {} : { snrDb };
    // Three partials of the top octave need more than half of 22.05 kHz.
    const sampleRateHz = midi > 100 ? 44100 : 22050;
    const { reading, truth } = measured({
      strings: [{ midi, offsetCents: 3 }],
      durationS,
      sampleRateHz,
      seed: midi,
      ...noise,
    });
    const [string] = truth.strings;
    const errorCents = hzToCents(reading.partial1Hz, string!.partialHz[0]!);
    return { midi, reading, errorCents, errorB: reading.inharmonicityB! / string!.inharmonicityB - 1 };
  });
}

const median = (values: readonly number[]) => [...values].sort((a, b) => a - b)[values.length >> 1]!;

describe('clean tones along the compass', () => {
  const rows = survey();

  it('are named rightly, without a fault or a beat', () => {
    expect(rows.map((row) => row.reading.midi)).toEqual(NOTES);
    for (const { reading } of rows) {
      expect(reading.quality.faults).toEqual([]);
      expect(reading.partials.every((partial) => partial.beats.length === 0)).toBe(true);
    }
  });

  it('give B to 0.001 % in the median and 0.01 % each', () => {
    expect(median(rows.map((row) => Math.abs(row.errorB)))).toBeLessThan(1e-5);
    for (const { errorB } of rows) expect(Math.abs(errorB)).toBeLessThan(1e-4);
  });

  it('give partial 1 to 0.00002 cents in the median, 0.005 cents each', () => {
    expect(median(rows.map((row) => Math.abs(row.errorCents)))).toBeLessThan(2e-5);
    for (const { errorCents } of rows) expect(Math.abs(errorCents)).toBeLessThan(0.005);
  });
});

describe.each([
  { snrDb: 40, medianCents: 5e-4, medianB: 5e-5 },
  { snrDb: 15, medianCents: 8e-3, medianB: 8e-4 },
])('tones at $snrDb dB', ({ snrDb, medianCents, medianB }) => {
  const rows = survey(snrDb);

  it(`give partial 1 to ${medianCents} cents and B to ${medianB} in the median`, () => {
    expect(rows.map((row) => row.reading.midi)).toEqual(NOTES);
    expect(median(rows.map((row) => Math.abs(row.errorCents)))).toBeLessThan(medianCents);
    expect(median(rows.map((row) => Math.abs(row.errorB)))).toBeLessThan(medianB);
  });

  it('state what they are off by: no error beyond four and a half of the stated sigmas, most within two', () => {
    const z = rows.flatMap(({ reading, errorCents, errorB }) => [
      Math.abs(errorCents) / reading.offsetStandardUncertaintyCents,
      Math.abs(errorB * reading.inharmonicityB!) / reading.inharmonicityBStandardUncertainty!,
    ]);
    expect(Math.max(...z)).toBeLessThan(4.5);
    expect(z.filter((value) => value < 2).length).toBeGreaterThan(0.85 * z.length);
  });
});

it('the first partial of a low bass note that the room swallows is taken from the fit, and said so', () => {
  const { reading, truth } = measured({ strings: [{ midi: 22 }], snrDb: 12, seed: 5 });
  expect(reading.partial1Source).toBe('fitted');
  expect(Math.abs(hzToCents(reading.partial1Hz, truth.strings[0]!.partialHz[0]!))).toBeLessThan(0.05);
  expect(reading.offsetStandardUncertaintyCents).toBeGreaterThan(0);
});
