import { describe, expect, it } from 'vitest';
import { frequencyBoundHz } from '../../../src/analysis/signal/cramerRao.ts';
import { boundCovariance, DAMPED_TONE_STEPS, dampedTones } from '../fisherInformation.ts';

/** D. C. Rife, R. R. Boorstyn, IEEE Trans. IT 20 (1974) 591–598, for a real tone: η = A²/(2σ²). */
function rifeBoorstynHz(signalToNoiseDb: number, count: number, sampleRateHz: number): number {
  const eta = 10 ** (signalToNoiseDb / 10);
  return (sampleRateHz / (2 * Math.PI)) * Math.sqrt(12 / (eta * count * (count ** 2 - 1)));
}

/** Noise that stands so far below a sine of amplitude 1. */
const noiseBelow = (db: number) => Math.SQRT1_2 * 10 ** (-db / 20);

const STEADY = { amplitude: 1, dampingPerS: 0, sampleRateHz: 44100 };

describe('frequencyBoundHz', () => {
  // Worked by hand from Rife and Boorstyn's formula: 44100/2π·√(12/(10⁴·44100·(44100² − 1))), and likewise for 22050 samples, 20 dB.
  it.each([
    { durationS: 1, db: 40, expectedHz: 2.625e-5 },
    { durationS: 0.5, db: 20, expectedHz: 7.426e-4 },
  ])('is $expectedHz Hz for a steady tone of $durationS s at $db dB', ({ durationS, db, expectedHz }) => {
    const boundHz = frequencyBoundHz({ ...STEADY, durationS, noiseRms: noiseBelow(db) });
    expect(boundHz / expectedHz).toBeCloseTo(1, 3);
  });

  it.each([0.02, 0.3, 2])('is Rife and Boorstyn’s closed form for %s s without damping', (durationS) => {
    const boundHz = frequencyBoundHz({ ...STEADY, durationS, noiseRms: noiseBelow(25) });
    expect(boundHz / rifeBoorstynHz(25, durationS * 44100, 44100)).toBeCloseTo(1, 6);
  });

  it('is 1.376e-4 Hz for a tone that dies by 60 dB in 2 s, wholly recorded, at 40 dB', () => {
    // σ_f = √(8·α³/(f_s·η))/2π with α = ln(1000)/2 s, η = 10⁴, f_s = 44100 Hz: the integrals of t^p·e^(−2αt) from 0 to ∞.
    const dampingPerS = Math.log(1000) / 2;
    const boundHz = frequencyBoundHz({ ...STEADY, dampingPerS, durationS: 8, noiseRms: noiseBelow(40) });
    expect(boundHz / 1.376e-4).toBeCloseTo(1, 2.5);
    expect(boundHz / (Math.sqrt((8 * dampingPerS ** 3) / (44100 * 1e4)) / (2 * Math.PI))).toBeCloseTo(1, 3);
  });

  it.each([
    { dampingPerS: 0, durationS: 0.25, phase: 0.3 },
    { dampingPerS: 2, durationS: 0.5, phase: 2 },
    { dampingPerS: 25, durationS: 0.3, phase: -1 },
    { dampingPerS: -1, durationS: 0.4, phase: 1.1 },
  ])('agrees with derivatives taken by differences, $dampingPerS per s for $durationS s', ({ phase, ...row }) => {
    const sampleRateHz = 8000;
    const model = dampedTones(row.durationS * sampleRateHz, sampleRateHz);
    const covariance = boundCovariance(model, [1234.5, row.dampingPerS, Math.log(0.7), phase], DAMPED_TONE_STEPS, 0.01);
    const boundHz = frequencyBoundHz({ ...row, amplitude: 0.7, noiseRms: 0.01, sampleRateHz });
    // The closed form leaves out the terms at twice the frequency: hundreds of cycles long, they are under half a percent.
    expect(Math.abs(boundHz / Math.sqrt(covariance[0]![0]!) - 1)).toBeLessThan(0.005);
  });

  it('depends on the ratio of amplitude to noise alone, in proportion', () => {
    const tone = { ...STEADY, dampingPerS: 3, durationS: 0.7, noiseRms: 0.02 };
    const boundHz = frequencyBoundHz(tone);
    expect(frequencyBoundHz({ ...tone, amplitude: 2, noiseRms: 0.04 }) / boundHz).toBeCloseTo(1, 12);
    expect(frequencyBoundHz({ ...tone, noiseRms: 0.06 }) / boundHz).toBeCloseTo(3, 12);
  });

  it('never grows with the length recorded', () => {
    const bounds = [0.1, 0.5, 1, 3, 10].map((durationS) =>
      frequencyBoundHz({ ...STEADY, dampingPerS: 2, durationS, noiseRms: 0.01 }),
    );
    expect([...bounds].sort((a, b) => b - a)).toEqual(bounds);
  });
});
