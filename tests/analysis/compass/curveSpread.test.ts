import { describe, expect, it } from 'vitest';
import { fittedSpreads, type Residual, type SpreadPrior } from '../../../src/analysis/compass/curveSpread.ts';
import { seededRandom } from '../../support/seededRandom.ts';

const ONE_GROUP: SpreadPrior = { usual: 0.05, worthNotes: 4, groupCount: 1, groupOf: () => 0, groupWorthNotes: 0 };
const TWO_GROUPS: SpreadPrior = { ...ONE_GROUP, groupCount: 2, groupWorthNotes: 6 };

function residuals(count: number, spread: number, standardUncertainty: number, seed: number, group = 0): Residual[] {
  const random = seededRandom(seed);
  return Array.from({ length: count }, () => ({
    group,
    size: Math.abs(Math.hypot(spread, standardUncertainty) * random.normal()),
    standardUncertainty,
  }));
}

describe('fittedSpreads', () => {
  // 4,000 residuals: the estimate's own standard error is 1.2 %, and 2.5 % once the measuring errors are taken off.
  it('finds the spread of normal departures, with their measuring errors taken off', () => {
    for (const standardUncertainty of [0, 0.1]) {
      const [spread] = fittedSpreads(ONE_GROUP, residuals(4000, 0.08, standardUncertainty, 1), 0);
      expect(spread! / 0.08).toBeGreaterThan(0.93);
      expect(spread! / 0.08).toBeLessThan(1.07);
    }
  });

  it('counts the freedom that the curve has taken', () => {
    const all = residuals(4000, 0.08, 0, 3);
    const [plain] = fittedSpreads(ONE_GROUP, all, 0);
    const [corrected] = fittedSpreads(ONE_GROUP, all, 1000);
    // With a quarter of the freedom gone the same residuals mean a larger spread: by 1/√0.75 for small ones, more as the corner bites.
    expect(corrected! / plain!).toBeGreaterThan(1.15);
    expect(corrected! / plain!).toBeLessThan(1.35);
  });

  it('is moved by less than a fifth by one wrong figure in ten, however wrong', () => {
    const wrong = residuals(400, 0.05, 0, 4).map((one, index) => (index % 10 === 0 ? { ...one, size: 1e3 } : one));
    const [spread] = fittedSpreads(ONE_GROUP, wrong, 0);
    expect(spread).toBeGreaterThan(0.05);
    expect(spread).toBeLessThan(0.06);
  });

  it('keeps to what is usual where there is next to nothing to go by', () => {
    expect(fittedSpreads(ONE_GROUP, residuals(1, 0.001, 0, 5), 0)[0]).toBeGreaterThan(0.04);
    expect(fittedSpreads(ONE_GROUP, residuals(2, 5, 0, 6), 0)[0]).toBeLessThan(0.25);
  });

  it('gives each group its own, and a group with no notes that of all', () => {
    const wound = residuals(1000, 0.1, 0, 7, 0);
    const plain = residuals(1000, 0.02, 0, 8, 1);
    const [first, second] = fittedSpreads(TWO_GROUPS, [...wound, ...plain], 0);
    expect(first! / 0.1).toBeGreaterThan(0.9);
    expect(first! / 0.1).toBeLessThan(1.1);
    expect(second! / 0.02).toBeGreaterThan(0.9);
    expect(second! / 0.02).toBeLessThan(1.15);
    const [none, only] = fittedSpreads(TWO_GROUPS, plain, 0);
    expect(none! / only!).toBeCloseTo(1, 1);
  });
});
