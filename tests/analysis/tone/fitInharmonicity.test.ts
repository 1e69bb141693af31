import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { inverse, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { fitInharmonicity, predictPartial } from '../../../src/analysis/tone/fitInharmonicity.ts';
import { centsToHz, hzToCents, uncertaintyHzToCents } from '../../../src/piano/cents.ts';
import { seededRandom } from '../../support/seededRandom.ts';

const F0_HZ = 220;
const B = 5e-4;
const START = { f0Hz: 219.7, inharmonicityB: 8e-4 };
const stiffHz = (n: number, f0Hz = F0_HZ, b = B) => n * f0Hz * Math.sqrt(1 + b * n * n);

/** Partials 1…count, each off the curve by a normal deviate: its own uncertainty, and scatter that nobody told the fit of. */
function partials(count: number, seed: number, sigmaCents: number, scatterCents = 0) {
  const { normal } = seededRandom(seed);
  return Array.from({ length: count }, (_, i) => {
    const trueHz = stiffHz(i + 1);
    const off = sigmaCents * normal() + scatterCents * normal();
    const standardUncertaintyHz = centsToHz(sigmaCents, trueHz) - trueHz;
    return { partialNumber: i + 1, hz: centsToHz(off, trueHz), standardUncertaintyHz };
  });
}

describe('fitInharmonicity against other ways', () => {
  it('finds f0 220.0000 Hz and B 5.0000e-4 from eight partials rounded to a thousandth of a hertz', () => {
    // The partials of Fletcher's formula, to be read off any spectrum display of that resolution.
    const hz = [220.055, 440.44, 661.483, 883.513, 1106.854, 1331.827, 1558.751, 1787.938];
    const rounded = hz.map((value, i) => ({
      partialNumber: i + 1,
      hz: value,
      standardUncertaintyHz: 0.001 / Math.sqrt(12),
    }));
    const fit = fitInharmonicity(rounded, START)!;
    expect(Math.abs(fit.f0Hz - 220)).toBeLessThan(0.0005);
    expect(Math.abs(fit.inharmonicityB / 5e-4 - 1)).toBeLessThan(1e-4);
  });

  it.each([
    [2, 6],
    [1, 8],
    [3, 10],
  ])('agrees with B from partials %s and %s alone, where all lie on the curve', (i, j) => {
    const exact = partials(10, 1, 1e-6);
    // B = (r − 1)/(j² − r·i²) with r = (f_j·i/(f_i·j))², from dividing Fletcher's formula for two partials.
    const r = ((exact[j - 1]!.hz * i) / (exact[i - 1]!.hz * j)) ** 2;
    const pairB = (r - 1) / (j * j - r * i * i);
    expect(fitInharmonicity(exact, START)!.inharmonicityB / pairB).toBeCloseTo(1, 5);
  });

  it('agrees with a general Levenberg–Marquardt fit within its own uncertainty', () => {
    for (const seed of [1, 2, 3, 4, 5]) {
      const noisy = partials(12, seed, 0.05);
      const fit = fitInharmonicity(noisy, START)!;
      // In cents all partials are equally sure, so that no weights are needed.
      const y = noisy.map((p) => hzToCents(p.hz / p.partialNumber, F0_HZ));
      const peer = levenbergMarquardt(
        { x: noisy.map((p) => p.partialNumber), y },
        ([cents, share]) =>
          (n) =>
            cents! + 600 * Math.log2(1 + B * share! * n * n),
        { initialValues: [0.1, 1.1], maxIterations: 100, gradientDifference: 1e-4, errorTolerance: 1e-12 },
      ).parameterValues;
      // The robust weights move it a little within the scatter; both are the same curve.
      expect(Math.abs(fit.f0Hz - centsToHz(peer[0]!, F0_HZ))).toBeLessThan(0.7 * fit.f0StandardUncertaintyHz);
      const offB = Math.abs(fit.inharmonicityB - B * peer[1]!);
      expect(offB).toBeLessThan(0.7 * fit.inharmonicityBStandardUncertainty);
    }
  });

  it('states uncertainties near those of a linear fit of (f_n/n)² over n²', () => {
    const noisy = partials(16, 9, 0.05);
    const fit = fitInharmonicity(noisy, START)!;
    const weights = noisy.map((p) => (p.partialNumber ** 2 / (2 * p.hz * p.standardUncertaintyHz)) ** 2);
    const rows = noisy.map((p, i) => [
      weights[i]!,
      weights[i]! * p.partialNumber ** 2,
      weights[i]! * p.partialNumber ** 4,
    ]);
    const sum = (k: number) => rows.reduce((total, row) => total + row[k]!, 0);
    const [[a, c], [, d]] = inverse(
      new Matrix([
        [sum(0), sum(1)],
        [sum(1), sum(2)],
      ]),
    ).to2DArray() as [[number, number], [number, number]];
    // y = f0² + f0²·B·n²: B = slope/intercept, so σ_B² = (d − 2·B·c + B²·a)/f0⁴.
    const sigmaB = Math.sqrt(d - 2 * B * c + B * B * a) / F0_HZ ** 2;
    expect(fit.inharmonicityBStandardUncertainty / sigmaB).toBeCloseTo(1, 0.6);
    expect(fit.f0StandardUncertaintyHz / (Math.sqrt(a) / (2 * F0_HZ))).toBeCloseTo(1, 0.6);
  });
});

describe('fitInharmonicity in scatter', () => {
  it.each([
    { count: 4, sigma: 0.02, scatter: 0 },
    { count: 14, sigma: 0.02, scatter: 0 },
    { count: 14, sigma: 0.02, scatter: 0.4 },
    { count: 30, sigma: 0.3, scatter: 0 },
  ])('covers the truth of $count partials, $sigma cents each and $scatter cents of the string’s own', (row) => {
    const z = Array.from({ length: 300 }, (_, seed) => {
      const fit = fitInharmonicity(partials(row.count, 1000 + seed, row.sigma, row.scatter), START)!;
      const ahead = predictPartial(fit, row.count + 4);
      return [
        (fit.f0Hz - F0_HZ) / fit.f0StandardUncertaintyHz,
        (fit.inharmonicityB - B) / fit.inharmonicityBStandardUncertainty,
        (ahead.hz - stiffHz(row.count + 4)) / ahead.standardUncertaintyHz,
      ];
    });
    const within = (k: number) => z.filter((values) => Math.abs(values[k]!) < 1).length / z.length;
    // 68 % expected, 2.7 % its own scatter over 300; a little more spread where the fit has to find the scatter itself.
    for (const k of [0, 1]) expect(within(k)).toBeGreaterThan(0.58);
    for (const k of [0, 1]) expect(within(k)).toBeLessThan(0.78);
    // A prediction counts the scatter of the partial that is yet to come.
    expect(within(2)).toBeGreaterThan(0.58);
    if (row.scatter === 0) expect(within(2)).toBeLessThan(0.78);
  });

  it('finds the string’s own scatter, and none where there is none', () => {
    const scatterOf = (scatter: number) =>
      Array.from(
        { length: 40 },
        (_, seed) => fitInharmonicity(partials(20, seed, 0.02, scatter), START)!.extraScatterCents,
      );
    const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
    expect(mean(scatterOf(0.5)) / 0.5).toBeCloseTo(1, 0.5);
    expect(mean(scatterOf(0))).toBeLessThan(0.005);
  });

  it.each([3, -3, 12])('takes the weight off one partial %s cents off the curve and keeps B', (offCents) => {
    const spoilt = partials(12, 4, 0.05).map((p) =>
      p.partialNumber === 5 ? { ...p, hz: centsToHz(offCents, p.hz) } : p,
    );
    const fit = fitInharmonicity(spoilt, START)!;
    expect(fit.weights[4]).toBeLessThan(0.2);
    expect(fit.weights.filter((weight) => weight > 0.5).length).toBeGreaterThan(9);
    expect(Math.abs(fit.inharmonicityB / B - 1)).toBeLessThan(0.003);
    expect(uncertaintyHzToCents(Math.abs(fit.f0Hz - F0_HZ), F0_HZ)).toBeLessThan(0.15);
  });
});

describe('fitInharmonicity', () => {
  it('doubles f0 and keeps B when every frequency doubles', () => {
    const one = partials(8, 3, 0.1);
    const two = one.map((p) => ({ ...p, hz: 2 * p.hz, standardUncertaintyHz: 2 * p.standardUncertaintyHz }));
    const [a, b] = [fitInharmonicity(one, START)!, fitInharmonicity(two, { ...START, f0Hz: 439.4 })!];
    expect(b.f0Hz / a.f0Hz).toBeCloseTo(2, 9);
    expect(b.inharmonicityB / a.inharmonicityB).toBeCloseTo(1, 7);
    expect(b.f0StandardUncertaintyHz / a.f0StandardUncertaintyHz).toBeCloseTo(2, 6);
  });

  it('does not depend on the order of the partials', () => {
    const given = partials(8, 3, 0.1);
    const reversed = fitInharmonicity([...given].reverse(), START)!;
    expect(reversed.f0Hz).toBeCloseTo(fitInharmonicity(given, START)!.f0Hz, 9);
  });

  it('needs three partials, or two and a prior', () => {
    const two = partials(2, 1, 0.01);
    expect(fitInharmonicity(two, START)).toBeUndefined();
    expect(fitInharmonicity(partials(1, 1, 0.01), START, { logB: Math.log(B), sigma: 0.3 })).toBeUndefined();
    const fit = fitInharmonicity(two, START, { logB: Math.log(B), sigma: 0.3 })!;
    expect(Math.abs(Math.log(fit.inharmonicityB / B))).toBeLessThan(0.4);
  });

  it('leans on the prior only where the partials say little', () => {
    const wrong = { logB: Math.log(3 * B), sigma: 0.35 };
    const certain = fitInharmonicity(partials(12, 1, 0.01), START, wrong)!;
    expect(certain.inharmonicityB / B).toBeCloseTo(1, 2);
    const vague = fitInharmonicity(partials(2, 1, 5), START, wrong)!;
    expect(Math.abs(Math.log(vague.inharmonicityB / (3 * B)))).toBeLessThan(0.35);
    expect(vague.inharmonicityBStandardUncertainty / vague.inharmonicityB).toBeGreaterThan(0.25);
  });

  it('predicts by Fletcher’s formula, less surely the further out', () => {
    const fit = fitInharmonicity(partials(8, 2, 0.02), START)!;
    const [near, far] = [predictPartial(fit, 4), predictPartial(fit, 25)];
    expect(far.hz).toBeCloseTo(25 * fit.f0Hz * Math.sqrt(1 + fit.inharmonicityB * 625), 8);
    const cents = (row: typeof near) => uncertaintyHzToCents(row.standardUncertaintyHz, row.hz);
    expect(cents(far)).toBeGreaterThan(5 * cents(near));
  });
});
