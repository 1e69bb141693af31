import { describe, expect, it } from 'vitest';
import type { CurveFigure, CurveModel } from '../../../src/analysis/compass/curveModel.ts';
import { curveValue, fitRobustCurve } from '../../../src/analysis/compass/robustCurve.ts';
import { seededRandom } from '../../support/seededRandom.ts';
import { rootMeanSquare } from '../../support/statistics.ts';

/** A straight line of which nothing is known beforehand. */
const LINE: CurveModel = {
  at: (midi, [height = 0, slope = 0]) => ({ value: height + slope * (midi - 60), gradient: [1, midi - 60] }),
  priors: [
    { mean: 0, sigma: 100 },
    { mean: 0, sigma: 10 },
  ],
  spread: { usual: 0.1, worthNotes: 1, groupCount: 1, groupOf: () => 0, groupWorthNotes: 0 },
};

const truth = (midi: number) => 2 + 0.05 * (midi - 60);

function figures(seed: number, count = 40, standardUncertainty = 0.05, spread = 0.1): CurveFigure[] {
  const random = seededRandom(seed);
  return Array.from({ length: count }, (_, index) => {
    const midi = 40 + index;
    const value = truth(midi) + Math.hypot(spread, standardUncertainty) * random.normal();
    return { midi, value, standardUncertainty };
  });
}

describe('fitRobustCurve', () => {
  it('goes through figures without noise', () => {
    const exact = figures(1).map(({ midi }) => ({ midi, value: truth(midi), standardUncertainty: 0.01 }));
    const fit = fitRobustCurve(LINE, exact)!;
    expect(fit.parameters[0]).toBeCloseTo(2, 4);
    expect(fit.parameters[1]).toBeCloseTo(0.05, 6);
  });

  it('states uncertainties as large as its errors are', () => {
    const seeds = Array.from({ length: 150 }, (_, index) => index + 1);
    const errors = seeds.map((seed) => {
      const { value, standardUncertainty } = curveValue(LINE, fitRobustCurve(LINE, figures(seed))!, 75);
      return (value - truth(75)) / standardUncertainty;
    });
    // 150 draws: the root mean square of a right figure is 1 ± 0.06.
    expect(rootMeanSquare(errors)).toBeGreaterThan(0.85);
    expect(rootMeanSquare(errors)).toBeLessThan(1.2);
  });

  it('is not bent by one wrong figure in ten, all on one side', () => {
    const wrong = figures(3).map((one, index) => (index % 10 === 5 ? { ...one, value: one.value + 4 } : one));
    const { value, standardUncertainty } = curveValue(LINE, fitRobustCurve(LINE, wrong)!, 60);
    expect(Math.abs(value - truth(60))).toBeLessThan(3 * standardUncertainty);
    expect(standardUncertainty).toBeLessThan(0.05);
  });

  it('judges each figure by the curve that the others make', () => {
    const all = figures(4, 12);
    const fit = fitRobustCurve(LINE, all)!;
    for (const [index, one] of all.entries()) {
      const without = fitRobustCurve(
        LINE,
        all.filter((other) => other !== one),
      )!;
      const { value } = curveValue(LINE, without, one.midi);
      expect(Math.abs(fit.departures[index]!.departure - (one.value - value)), `midi ${one.midi}`).toBeLessThan(0.03);
    }
  });

  it('holds an unsure figure to be worth less, and its departure less telling', () => {
    const all = figures(5).map((one, index) =>
      index === 39 ? { ...one, value: truth(one.midi) + 1, standardUncertainty: 2 } : one,
    );
    const fit = fitRobustCurve(LINE, all)!;
    expect(Math.abs(curveValue(LINE, fit, 79).value - truth(79))).toBeLessThan(0.1);
    const { departure, standardUncertainty } = fit.departures[39]!;
    expect(departure / standardUncertainty).toBeLessThan(1);
  });

  it('draws a parameter that no figure speaks of from its prior', () => {
    const known: CurveModel = {
      ...LINE,
      priors: [
        { mean: 0, sigma: 100 },
        { mean: 0.07, sigma: 0.01 },
      ],
    };
    const fit = fitRobustCurve(known, [{ midi: 60, value: 3, standardUncertainty: 0.01 }])!;
    expect(fit.parameters[1]).toBeCloseTo(0.07, 6);
    expect(Math.sqrt(fit.covariance[1]![1]!)).toBeCloseTo(0.01, 6);
  });

  it.each([
    ['no figure', [], /at least one/],
    ['a value that is no number', [{ midi: 60, value: Number.NaN, standardUncertainty: 0 }], /finite.*60/],
    ['a negative uncertainty', [{ midi: 60, value: 1, standardUncertainty: -1 }], /standardUncertainty.*-1/],
    ['an infinite uncertainty', [{ midi: 60, value: 1, standardUncertainty: Number.POSITIVE_INFINITY }], /Infinity/],
  ])('refuses %s', (_, wrong, message) => {
    expect(() => fitRobustCurve(LINE, wrong)).toThrow(message);
  });
});
