import { expect, it } from 'vitest';
import { measureTake } from '../../src/analysis/tone/measureTake.ts';
import { errorsInSigmas, shareWithin, spreadOfErrors, trialSound } from '../../src/survey/certaintyTrial.ts';
import { seededRandom } from '../support/seededRandom.ts';

const options = { pitchStandardHz: 440, stringPosition: 2 } as const;

function errorsOf(seed: number, soundCount: number): number[] {
  const random = seededRandom(seed);
  return Array.from({ length: soundCount }, () => trialSound(random)).flatMap((sound) => {
    const outcome = measureTake(sound.samples, sound.sampleRateHz, { ...options, onsetIndex: sound.onsetIndex });
    return outcome.found ? errorsInSigmas(sound, outcome.reading) : [];
  });
}

it('finds the truth within the stated uncertainty about as often as a normal distribution would', () => {
  const errors = errorsOf(1, 6);
  // Six sounds with up to eight partials, F0 and B each: the share within one is good to about 6 in 100 (binomial, one sigma).
  expect(errors.length).toBeGreaterThan(45);
  expect(shareWithin(errors, 1)).toBeGreaterThan(0.5);
  expect(shareWithin(errors, 1)).toBeLessThan(0.86);
  expect(shareWithin(errors, 2)).toBeGreaterThan(0.85);
});

it('gives the same sound for the same random numbers, and counts nothing where another note was named', () => {
  const [one, other] = [trialSound(seededRandom(5)), trialSound(seededRandom(5))];
  expect(other.samples).toEqual(one.samples);
  const outcome = measureTake(one.samples, one.sampleRateHz, { ...options, onsetIndex: one.onsetIndex });
  if (!outcome.found) throw new Error(outcome.detail);
  expect(errorsInSigmas(one, outcome.reading).length).toBeGreaterThan(4);
  expect(errorsInSigmas({ ...one, midi: one.midi + 1 }, outcome.reading)).toEqual([]);
});

it('spreads errors over steps that hold all of them, beside a normal distribution that sums to one', () => {
  const bins = spreadOfErrors([-9, -0.2, 0.1, 0.3, 12]);
  expect(bins).toHaveLength(16);
  expect(bins.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
  expect(bins.reduce((sum, { normalShare }) => sum + normalShare, 0)).toBeCloseTo(1, 6);
  expect(bins[0]?.share).toBeCloseTo(0.2, 12);
  expect(bins.at(-1)?.share).toBeCloseTo(0.2, 12);
  expect(bins.find(({ from }) => from === 0)?.share).toBeCloseTo(0.4, 12);
  // Standard normal table: P(0 < z < 0.5) = 0.19146.
  expect(bins.find(({ from }) => from === 0)?.normalShare).toBeCloseTo(0.19146, 5);
});

it('says nothing about a share of nothing', () => {
  expect(shareWithin([], 1)).toBeNull();
  expect(shareWithin([-1.5, 0.5, 2.5, 1], 1)).toBe(0.5);
});
