import { describe, expect, it } from 'vitest';
import { fitDampedSinusoids } from '../../../src/analysis/signal/dampedSinusoids.ts';
import { hiddenAftersoundHz, withHiddenAftersound } from '../../../src/analysis/tone/hiddenAftersound.ts';
import { partialOf } from '../partialFits.ts';

const TONE = { amplitude: 0.1, dampingPerS: 3, audibleS: 1, noiseRms: 0.02, sampleRateHz: 44100 };

/** What one damped sinusoid fitted to prompt sound and aftersound of one frequency takes for it, over 24 phases. */
function shiftHz(ratio: number, slowness: number, dampingPerS: number, durationS: number): number {
  const rateHz = 200;
  const length = durationS * rateHz;
  const shifts = Array.from({ length: 24 }, (_, k) => {
    const phase = (2 * Math.PI * k) / 24;
    const at = (m: number, part: (angle: number) => number) => {
      const timeS = m / rateHz;
      const after = ratio * Math.exp(-dampingPerS * (1 - slowness) * timeS) * part(phase);
      return Math.exp(-dampingPerS * timeS) * part(0) + after;
    };
    const series = {
      re: Float64Array.from({ length }, (_, m) => at(m, Math.cos)),
      im: Float64Array.from({ length }, (_, m) => at(m, Math.sin)),
    };
    const start = [{ frequencyRad: 0, damping: dampingPerS / rateHz, amplitudeRe: 1, amplitudeIm: 0 }];
    const fit = fitDampedSinusoids(series, start, { maxIterations: 60, leastDamping: 0, mostDamping: 1.5 });
    return (fit.components[0]!.frequencyRad * rateHz) / (2 * Math.PI);
  });
  return Math.sqrt(shifts.reduce((sum, shift) => sum + shift ** 2, 0) / 24);
}

describe('hiddenAftersoundHz', () => {
  it.each([
    { dampingPerS: 3, audibleS: 0.6 },
    { dampingPerS: 10, audibleS: 0.25 },
    { dampingPerS: 1, audibleS: 1.5 },
  ])(
    'is about what a fit of one tone is off by, from $dampingPerS per s, $audibleS s long',
    ({ dampingPerS, audibleS }) => {
      const hidden = hiddenAftersoundHz({ ...TONE, dampingPerS, audibleS, noiseRms: 10 });
      const share = hidden / shiftHz(0.16, 0.75, dampingPerS, audibleS);
      // An order of magnitude: the usual aftersound's own ratio is no better known.
      expect(share).toBeGreaterThan(0.2);
      expect(share).toBeLessThan(2);
    },
  );

  it('is nought where the bend of the decay would have shown', () => {
    expect(hiddenAftersoundHz({ ...TONE, noiseRms: 1e-6 })).toBeLessThan(
      1e-5 * hiddenAftersoundHz({ ...TONE, noiseRms: 1 }),
    );
  });

  it('is nought for a tone that does not decay', () => {
    expect(hiddenAftersoundHz({ ...TONE, dampingPerS: 0 })).toBe(0);
  });
});

describe('withHiddenAftersound', () => {
  const single = (n: number) => partialOf(n, [{ hz: 440 * n, amplitude: 0.1, dampingPerS: 3 }], { noiseRms: 0.1 });
  const double = (n: number) =>
    partialOf(n, [
      { hz: 440 * n, amplitude: 0.1, dampingPerS: 3 },
      { hz: 440 * n, amplitude: 0.02, dampingPerS: 0.7 },
    ]);

  it('changes nothing where partials that would have shown an aftersound show none', () => {
    const quiet = (n: number) => partialOf(n, [{ hz: 440 * n, amplitude: 0.1, dampingPerS: 3 }], { noiseRms: 1e-6 });
    const [first, second] = withHiddenAftersound([single(1), quiet(2), quiet(3)]);
    expect(first).toEqual(single(1));
    expect(second!.standardUncertaintyHz).toBeCloseTo(quiet(2).standardUncertaintyHz, 9);
  });

  it('reckons with half an aftersound where no partial could have shown one', () => {
    const [unknown] = withHiddenAftersound([single(1), single(2)]);
    const [likely] = withHiddenAftersound([single(1), double(2)]);
    const excess = (u: number) => Math.sqrt(u ** 2 - single(1).standardUncertaintyHz ** 2);
    expect(excess(unknown!.standardUncertaintyHz) / excess(likely!.standardUncertaintyHz)).toBeCloseTo(0.5, 6);
  });

  it('makes single partials less certain where another shows one, and that one a little too', () => {
    const [first, second] = withHiddenAftersound([single(1), double(2)]);
    expect(first!.standardUncertaintyHz).toBeGreaterThan(3 * single(1).standardUncertaintyHz);
    expect(first!.hz).toBe(440);
    expect(second!.standardUncertaintyHz).toBeCloseTo(1.25 * double(2).standardUncertaintyHz, 9);
    expect(second!.components).toEqual(double(2).components);
  });

  it('does not take a beat for an aftersound, and knows its rate less well where others have one', () => {
    const components = [
      { hz: 440, amplitude: 0.1, dampingPerS: 3 },
      { hz: 443, amplitude: 0.05, dampingPerS: 3 },
    ];
    const beating = partialOf(1, components, { noiseRms: 0.1 });
    const quiet = partialOf(2, [{ hz: 880, amplitude: 0.1, dampingPerS: 3 }], { noiseRms: 1e-6 });
    const [alone] = withHiddenAftersound([beating, quiet, quiet]);
    expect(alone!.covarianceHz).toEqual(beating.covarianceHz);
    const [one, other] = withHiddenAftersound([beating, { ...beating, partialNumber: 2 }]);
    expect(one!.covarianceHz).toEqual(beating.covarianceHz);
    expect(other!.covarianceHz).toEqual(beating.covarianceHz);
    const [beside] = withHiddenAftersound([beating, double(2)]);
    expect(beside!.covarianceHz[0]![0]!).toBeGreaterThan(4 * beating.covarianceHz[0]![0]!);
    expect(beside!.covarianceHz[1]![1]!).toBeGreaterThan(4 * beating.covarianceHz[1]![1]!);
    expect(beside!.hz).toBe(beating.hz);
  });
});
