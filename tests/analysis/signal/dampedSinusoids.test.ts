import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import {
  basisOf,
  type Component,
  covarianceOf,
  energyOf,
  fitDampedSinusoids,
  residualOf,
  type Series,
  withBestAmplitudes,
} from '../../../src/analysis/signal/dampedSinusoids.ts';
import { type SeededRandom, seededRandom } from '../../support/seededRandom.ts';
import { boundCovariance } from '../fisherInformation.ts';

const LIMITS = { maxIterations: 60, leastDamping: -0.05, mostDamping: 1.5 };

/** Written with Math.exp and Math.cos value by value, not by the recursion under test. */
function seriesOf(
  components: readonly Component[],
  length: number,
  noise?: { random: SeededRandom; rms: number },
): Series {
  const value = (m: number, part: 're' | 'im') =>
    components.reduce((sum, { frequencyRad, damping, amplitudeRe, amplitudeIm }) => {
      const angle = frequencyRad * m;
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
      const turned = part === 're' ? amplitudeRe * cos - amplitudeIm * sin : amplitudeRe * sin + amplitudeIm * cos;
      return sum + Math.exp(-damping * m) * turned;
    }, 0) + (noise ? noise.rms * noise.random.normal() : 0);
  return {
    re: Float64Array.from({ length }, (_, m) => value(m, 're')),
    im: Float64Array.from({ length }, (_, m) => value(m, 'im')),
  };
}

const ONE = { frequencyRad: 0.13, damping: 0.02, amplitudeRe: 0.4, amplitudeIm: -0.3 };
const NEAR = { frequencyRad: 0.16, damping: 0.006, amplitudeRe: -0.1, amplitudeIm: 0.2 };
const FAR = { frequencyRad: -0.6, damping: 0.001, amplitudeRe: 0.05, amplitudeIm: 0.02 };

const nudged = ({ frequencyRad, damping, amplitudeRe, amplitudeIm }: Component): Component => ({
  frequencyRad: frequencyRad + 0.004,
  damping: damping * 1.3 + 0.001,
  amplitudeRe: amplitudeRe * 0.8,
  amplitudeIm: amplitudeIm * 1.1,
});

it('basisOf is e^((−damping + j·frequency)·m), also far out', () => {
  const basis = basisOf({ frequencyRad: 0.7, damping: 0.001 }, 3000);
  for (const m of [0, 1, 17, 2999]) {
    expect(basis.re[m]).toBeCloseTo(Math.exp(-0.001 * m) * Math.cos(0.7 * m), 11);
    expect(basis.im[m]).toBeCloseTo(Math.exp(-0.001 * m) * Math.sin(0.7 * m), 11);
  }
});

it('residualOf leaves nothing of a series made of the components, and energyOf weighs what is left', () => {
  const series = seriesOf([ONE, NEAR], 120);
  expect(energyOf(residualOf(series, [ONE, NEAR]))).toBeLessThan(1e-24);
  const energy = series.re.reduce((sum, x, m) => sum + x * x + series.im[m]! ** 2, 0);
  expect(energyOf(series)).toBeCloseTo(energy, 12);
  expect(energyOf({ ...series, weights: new Float64Array(120).fill(0.25) })).toBeCloseTo(energy / 4, 12);
});

it('withBestAmplitudes solves the least-squares problem as ml-matrix does', () => {
  const random = seededRandom(5);
  const series = seriesOf([ONE, FAR], 60, { random, rms: 0.2 });
  const weights = Float64Array.from({ length: 60 }, () => 0.2 + 0.8 * random.uniform());
  const rows = [0, 1].flatMap((part) =>
    Array.from({ length: 60 }, (_, m) => {
      const root = Math.sqrt(weights[m]!);
      return [NEAR, FAR].flatMap((pole) => {
        const { re, im } = basisOf(pole, 60);
        return part === 0 ? [root * re[m]!, -root * im[m]!] : [root * im[m]!, root * re[m]!];
      });
    }),
  );
  const right = [...series.re, ...series.im].map((value, i) => value * Math.sqrt(weights[i % 60]!));
  const peer = solve(new Matrix(rows), Matrix.columnVector(right), true).to1DArray();
  const own = withBestAmplitudes({ ...series, weights }, [NEAR, FAR])!;
  own.forEach((component, i) => {
    expect(component.amplitudeRe).toBeCloseTo(peer[2 * i]!, 10);
    expect(component.amplitudeIm).toBeCloseTo(peer[2 * i + 1]!, 10);
  });
  expect(withBestAmplitudes(series, [NEAR, NEAR])).toBeUndefined();
});

describe('fitDampedSinusoids', () => {
  it.each([
    { name: 'one', truth: [ONE] },
    { name: 'two half a cycle apart over the record', truth: [ONE, NEAR] },
    { name: 'two at one frequency with two dampings', truth: [ONE, { ...NEAR, frequencyRad: ONE.frequencyRad }] },
    { name: 'three', truth: [ONE, NEAR, FAR] },
    { name: 'one that swells', truth: [{ ...ONE, damping: -0.004 }] },
  ])('recovers $name exactly without noise', ({ truth }) => {
    const fit = fitDampedSinusoids(seriesOf(truth, 160), truth.map(nudged), { ...LIMITS, maxIterations: 300 });
    expect(fit.hasConverged).toBe(true);
    truth.forEach((component, k) => {
      for (const key of ['frequencyRad', 'damping', 'amplitudeRe', 'amplitudeIm'] as const)
        expect(Math.abs(fit.components[k]![key] - component[key])).toBeLessThan(2e-4);
    });
  });

  it('keeps the dampings within the limits given', () => {
    const series = seriesOf([{ ...ONE, damping: -0.02 }], 100);
    const fit = fitDampedSinusoids(series, [{ ...ONE, damping: 0.1 }], { ...LIMITS, leastDamping: 0 });
    expect(fit.components[0]!.damping).toBe(0);
  });

  it('pays no attention to values without weight', () => {
    const clean = seriesOf([ONE], 100);
    const spoilt = { ...clean, re: clean.re.map((value, m) => (m === 40 || m === 41 ? 50 : value)) };
    const weights = new Float64Array(100).fill(1);
    weights[40] = 0;
    weights[41] = 0;
    const [found] = fitDampedSinusoids({ ...spoilt, weights }, [nudged(ONE)], LIMITS).components;
    expect(found!.frequencyRad).toBeCloseTo(ONE.frequencyRad, 6);
  });

  it('scatters by no more than the bound allows, and never less: 200 noisy series', () => {
    const length = 90;
    const rms = 0.03;
    const covariance = covarianceOf(seriesOf([ONE], length), [ONE])!;
    const random = seededRandom(77);
    const z = Array.from({ length: 200 }, () => {
      const series = seriesOf([ONE], length, { random, rms });
      const [found] = fitDampedSinusoids(series, [nudged(ONE)], LIMITS).components;
      return {
        frequency: (found!.frequencyRad - ONE.frequencyRad) / (rms * Math.sqrt(covariance[0]!)),
        damping: (found!.damping - ONE.damping) / (rms * Math.sqrt(covariance[5]!)),
      };
    });
    for (const key of ['frequency', 'damping'] as const) {
      const spread = Math.sqrt(z.reduce((sum, row) => sum + row[key] ** 2, 0) / z.length);
      // A standard deviation from 200 values is known to 5 %; three of these.
      expect(Math.abs(spread - 1)).toBeLessThan(0.15);
    }
  });
});

describe('covarianceOf', () => {
  it.each([
    { name: 'one component', components: [ONE] },
    { name: 'two, near each other', components: [ONE, NEAR] },
    { name: 'three', components: [ONE, NEAR, FAR] },
  ])('is the inverse of the information found by differences: $name', ({ components }) => {
    const length = 80;
    const model = (parameters: readonly number[]) => {
      const moved = components.map((component, k) => {
        const [frequencyRad, damping, growRe, growIm] = parameters.slice(4 * k, 4 * k + 4) as [
          number,
          number,
          number,
          number,
        ];
        return {
          frequencyRad,
          damping,
          amplitudeRe: component.amplitudeRe * (1 + growRe) - component.amplitudeIm * growIm,
          amplitudeIm: component.amplitudeIm * (1 + growRe) + component.amplitudeRe * growIm,
        };
      });
      const { re, im } = seriesOf(moved, length);
      return Float64Array.from([...re, ...im]);
    };
    const at = components.flatMap(({ frequencyRad, damping }) => [frequencyRad, damping, 0, 0]);
    const bound = boundCovariance(
      model,
      at,
      at.map((_, i) => (i % 4 < 2 ? 1e-6 : 1e-5)),
      1,
    );
    const own = covarianceOf(seriesOf(components, length), components)!;
    bound.forEach((row, i) => {
      row.forEach((value, j) => {
        const scale = Math.sqrt(bound[i]![i]! * bound[j]![j]!);
        expect(Math.abs(own[i * at.length + j]! - value) / scale).toBeLessThan(1e-4);
      });
    });
  });

  it('is undefined for two components at one place', () => {
    expect(covarianceOf(seriesOf([ONE], 50), [ONE, ONE])).toBeUndefined();
  });
});
