import { describe, expect, it } from 'vitest';
import { hzToCents } from '../../src/piano/cents.ts';
import { phaseSlopeHz } from './phaseSlope.ts';
import { seededRandom } from './seededRandom.ts';
import { synthesizeNote } from './syntheticString.ts';
import { synthesizeSurvey } from './syntheticSurvey.ts';
import { typicalB } from './typicalPiano.ts';

describe('seededRandom', () => {
  it('gives the same numbers for the same seed and others for the next', () => {
    const draw = (seed: number) => Array.from({ length: 5 }, seededRandom(seed).uniform);
    expect(draw(7)).toEqual(draw(7));
    expect(draw(7)).not.toEqual(draw(8));
  });

  it('has the moments of a normal distribution', () => {
    const values = Array.from({ length: 100_000 }, seededRandom(3).normal);
    const moment = (power: number) => values.reduce((sum, value) => sum + value ** power, 0) / values.length;
    // Standard errors at 100,000 draws: 0.0032, 0.0045, 0.031.
    expect(Math.abs(moment(1))).toBeLessThan(0.013);
    expect(Math.abs(moment(2) - 1)).toBeLessThan(0.018);
    expect(Math.abs(moment(4) - 3)).toBeLessThan(0.13);
  });
});

describe('synthesizeNote', () => {
  it('sounds at the frequency that its truth states', () => {
    const { samples, truth } = synthesizeNote({
      strings: [{ midi: 69, offsetCents: 7, partialCount: 1 }],
      durationS: 2,
      leadS: 0.05,
      sampleRateHz: 48000,
      seed: 5,
    });
    const heardHz = phaseSlopeHz(samples.subarray(truth.onsetIndex + 480), 48000, 441);
    expect(hzToCents(truth.strings[0]!.partialHz[0]!, 440)).toBeCloseTo(7, 9);
    // Leakage from the block edges: a few thousandths of a cent.
    expect(Math.abs(hzToCents(heardHz, truth.strings[0]!.partialHz[0]!))).toBeLessThan(0.01);
  });

  it('places the partials of a stiff string', () => {
    const { strings } = synthesizeNote({ strings: [{ midi: 60 }], durationS: 1, sampleRateHz: 48000, seed: 1 }).truth;
    const { partialHz, f0Hz, inharmonicityB } = strings[0]!;
    expect(inharmonicityB).toBeCloseTo(typicalB(60), 12);
    expect(partialHz[9]! / (10 * f0Hz)).toBeCloseTo(Math.sqrt(1 + 100 * inharmonicityB), 12);
  });

  it('adds noise at the stated ratio and none before it is asked to', () => {
    const spec = { strings: [{ midi: 72 }], durationS: 3, leadS: 1, sampleRateHz: 22050, seed: 2 };
    const rms = (samples: Float32Array) => Math.sqrt(samples.reduce((sum, x) => sum + x * x, 0) / samples.length);
    const clean = synthesizeNote(spec).samples;
    expect(rms(clean.subarray(0, 22050))).toBe(0);
    for (const pinkNoise of [false, true]) {
      const noisy = synthesizeNote({ ...spec, snrDb: 20, pinkNoise }).samples;
      const noise = noisy.map((sample, index) => sample - clean[index]!);
      const ratioDb = 20 * Math.log10(rms(clean.subarray(22050, 22050 * 1.5)) / rms(noise));
      // Pink noise has few independent values at its low end, so its RMS over 3 s scatters.
      expect(Math.abs(ratioDb - 20)).toBeLessThan(pinkNoise ? 1.5 : 0.2);
    }
  });

  it('starts at the peak asked for and ends when the damper falls', () => {
    const spec = { strings: [{ midi: 48 }], durationS: 4, sampleRateHz: 22050, peak: 0.8, releaseAtS: 2, seed: 9 };
    const { samples } = synthesizeNote(spec);
    const largest = (stretch: Float32Array) => stretch.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
    expect(largest(samples)).toBeCloseTo(0.8, 6);
    expect(largest(samples.subarray(3.5 * 22050))).toBeLessThan(1e-4);
    expect(largest(samples.subarray(1.5 * 22050, 2 * 22050))).toBeGreaterThan(0.05);
  });
});

it('synthesizeSurvey strikes each note where its truth says', () => {
  const notes = [60, 61, 100, 101].map((midi) => ({ strings: [{ midi }], holdS: 1 }));
  const { samples, truth } = synthesizeSurvey({ notes, sampleRateHz: 22050, gapS: 0.5, seed: 4 });
  expect(truth.map((note) => note.midi)).toEqual([60, 61, 100, 101]);
  const energy = (from: number) => samples.subarray(from, from + 2205).reduce((sum, x) => sum + x * x, 0);
  for (const { onsetIndex } of truth) expect(energy(onsetIndex)).toBeGreaterThan(20 * energy(onsetIndex - 2205));
});
