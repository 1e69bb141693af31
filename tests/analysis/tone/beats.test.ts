import { describe, expect, it } from 'vitest';
import { beatsOf, visibleRatio } from '../../../src/analysis/tone/beats.ts';
import { centsToHz } from '../../../src/piano/cents.ts';
import { boundCovariance, DAMPED_TONE_STEPS } from '../fisherInformation.ts';
import { partialOf } from '../partialFits.ts';

describe('beatsOf', () => {
  it.each([
    // Unison 1.5 cents apart at A4: n·440·(2^(1.5/1200) − 1).
    { partialNumber: 1, rateHz: 0.3814 },
    { partialNumber: 2, rateHz: 0.7628 },
    { partialNumber: 4, rateHz: 1.5256 },
  ])(
    'is $rateHz Hz on partial $partialNumber of an A4 whose strings stand 1.5 cents apart',
    ({ partialNumber, rateHz }) => {
      const hz = 440 * partialNumber;
      const [beat] = beatsOf(
        partialOf(partialNumber, [
          { hz, amplitude: 0.2 },
          { hz: centsToHz(1.5, hz), amplitude: 0.15 },
        ]),
      );
      expect(beat!.rateHz).toBeCloseTo(rateHz, 4);
    },
  );

  it.each([
    // Largest over smallest size of a sum of two phasors: 20·log10((1 + r)/(1 − r)).
    { ratio: 0.1, depthDb: 1.743 },
    { ratio: 0.3, depthDb: 5.377 },
    { ratio: 0.5, depthDb: 9.542 },
  ])('is $depthDb dB deep where the second tone has $ratio of the first’s amplitude', ({ ratio, depthDb }) => {
    const parts = [
      { hz: 440, amplitude: 0.2 },
      { hz: 441, amplitude: 0.2 * ratio },
    ];
    expect(beatsOf(partialOf(1, parts))[0]!.depthDb).toBeCloseTo(depthDb, 3);
    expect(beatsOf(partialOf(1, [...parts].reverse()))[0]!.depthDb).toBeCloseTo(depthDb, 3);
  });

  it('takes the depth at the middle of the energy, where the two decay differently', () => {
    const [main, other] = [
      { hz: 440, amplitude: 0.2, dampingPerS: 2 },
      { hz: 442, amplitude: 0.05, dampingPerS: 0.5 },
    ];
    // By adding up small steps of time, not by the integrals.
    let [energy, moment] = [0, 0];
    for (let timeS = 5e-5; timeS < 3; timeS += 1e-4) {
      const power = [main, other].reduce((sum, c) => sum + (c.amplitude * Math.exp(-c.dampingPerS * timeS)) ** 2, 0);
      energy += power;
      moment += power * timeS;
    }
    const ratio = 0.25 * Math.exp((1.5 * moment) / energy);
    const expectedDb = 20 * Math.log10((1 + ratio) / (1 - ratio));
    expect(beatsOf(partialOf(1, [main, other]))[0]!.depthDb).toBeCloseTo(expectedDb, 2);
  });

  it('states the rate’s uncertainty from both frequencies, their covariance included', () => {
    const parts = [
      { hz: 440, amplitude: 0.2, standardUncertaintyHz: 0.003 },
      { hz: 441, amplitude: 0.1, standardUncertaintyHz: 0.004 },
    ];
    expect(beatsOf(partialOf(1, parts))[0]!.rateStandardUncertaintyHz).toBeCloseTo(0.005, 12);
    const covarianceHz = [
      [9e-6, 6e-6],
      [6e-6, 16e-6],
    ];
    const [beat] = beatsOf(partialOf(1, parts, { covarianceHz }));
    expect(beat!.rateStandardUncertaintyHz).toBeCloseTo(Math.sqrt(13e-6), 12);
  });

  it.each([
    { name: 'of a bent decay: two tones at one frequency', other: { hz: 440.02, amplitude: 0.05, dampingPerS: 0.3 } },
    { name: 'too shallow to hear', other: { hz: 442, amplitude: 0.01 } },
    { name: 'whose rate is not known', other: { hz: 440.4, amplitude: 0.1, standardUncertaintyHz: 0.2 } },
    { name: 'whose second tone is hardly there', other: { hz: 442, amplitude: 0.1, relativeUncertainty: 0.5 } },
    { name: 'so fast that it is roughness', other: { hz: 460, amplitude: 0.1 } },
    { name: 'with a tone that is gone at once', other: { hz: 441, amplitude: 0.1, dampingPerS: 200 } },
  ])('reports no beat $name', ({ other }) => {
    expect(beatsOf(partialOf(1, [{ hz: 440, amplitude: 0.2 }, other]))).toEqual([]);
  });

  it('reports the deepest first, and none for a single tone', () => {
    const beats = beatsOf(
      partialOf(1, [
        { hz: 440, amplitude: 0.2 },
        { hz: 441, amplitude: 0.03 },
        { hz: 442, amplitude: 0.1 },
      ]),
    );
    expect(beats.map((beat) => Math.round(beat.rateHz))).toEqual([2, 1]);
    expect(beatsOf(partialOf(1, [{ hz: 440, amplitude: 0.2 }]))).toEqual([]);
  });
});

describe('visibleRatio', () => {
  const RATE_HZ = 4000;
  const NOISE_RMS = 0.01;

  /** Six standard deviations of the amplitude of a tone `rateHz` beside a main one whose four parameters are unknown as well. */
  function boundRatio(dampingPerS: number, rateHz: number, durationS: number): number {
    const count = durationS * RATE_HZ;
    const model = ([hz, damping, logAmplitude, phase, re, im]: readonly number[]) =>
      Float64Array.from({ length: count }, (_, n) => {
        const timeS = n / RATE_HZ;
        const second = 2 * Math.PI * (700 + rateHz) * timeS;
        const beside = Math.exp(-dampingPerS * timeS) * (re! * Math.cos(second) + im! * Math.sin(second));
        return Math.exp(logAmplitude! - damping! * timeS) * Math.cos(2 * Math.PI * hz! * timeS + phase!) + beside;
      });
    const at = [700, dampingPerS, Math.log(0.3), 0.4, 0, 0];
    const covariance = boundCovariance(model, at, [...DAMPED_TONE_STEPS, 1e-5, 1e-5], NOISE_RMS);
    return (6 * Math.sqrt(0.5 * (covariance[4]![4]! + covariance[5]![5]!))) / 0.3;
  }

  it.each([
    { dampingPerS: 2, rateHz: 0.6, durationS: 4 },
    { dampingPerS: 2, rateHz: 2, durationS: 4 },
    { dampingPerS: 6, rateHz: 3, durationS: 2 },
    { dampingPerS: 0.3, rateHz: 1, durationS: 2 },
  ])('is near six standard deviations by the bound, T60 from $dampingPerS per s, $rateHz Hz apart', (row) => {
    const { dampingPerS, rateHz, durationS } = row;
    const partial = partialOf(1, [{ hz: 700, amplitude: 0.3, dampingPerS }], {
      sampleRateHz: RATE_HZ,
      noiseRms: NOISE_RMS,
      audibleS: durationS,
    });
    const share = visibleRatio(partial, rateHz) / boundRatio(dampingPerS, rateHz, durationS);
    // An approximation by design; a factor two either way would make "none" a wrong claim.
    expect(share).toBeGreaterThan(0.6);
    expect(share).toBeLessThan(1.7);
  });

  it('is in proportion to the noise and grows without end as the rate goes to zero', () => {
    const partial = partialOf(1, [{ hz: 700, amplitude: 0.3 }]);
    const louder = { ...partial, noiseRms: 3 * partial.noiseRms };
    expect(visibleRatio(louder, 1) / visibleRatio(partial, 1)).toBeCloseTo(3, 12);
    expect(visibleRatio(partial, 0.01)).toBeGreaterThan(100 * visibleRatio(partial, 1));
  });
});
