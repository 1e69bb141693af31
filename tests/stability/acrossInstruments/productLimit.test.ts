import { describe, expect, it } from 'vitest';
import { betaBelow, betaQuantile } from '../../../src/stability/acrossInstruments/betaDistribution.ts';
import { atRiskAt, productLimit, type Span } from '../../../src/stability/acrossInstruments/productLimit.ts';

const ended = (exitYears: number, entryYears = 0): Span => ({ entryYears, exitYears, hasEnded: true });
const lastSeen = (exitYears: number, entryYears = 0): Span => ({ entryYears, exitYears, hasEnded: false });

/**
 * Remission times in weeks of the 21 treated patients of E. J. Freireich and others, Blood 21 (1963) 699–716: the data and the estimate
 * stand in most textbooks on survival. Both are from memory.
 */
const TREATED: readonly Span[] = [
  ...[6, 6, 6, 7, 10, 13, 16, 22, 23].map((weeks) => ended(weeks)),
  ...[6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35].map((weeks) => lastSeen(weeks)),
];

describe('productLimit', () => {
  it.each([
    [6, 21, 3, 0.857, 0.0764],
    [7, 17, 1, 0.807, 0.0869],
    [10, 15, 1, 0.753, 0.0963],
    [13, 12, 1, 0.69, 0.1068],
    [16, 11, 1, 0.627, 0.1141],
    [22, 7, 1, 0.538, 0.1282],
    [23, 6, 1, 0.448, 0.1346],
  ])('agrees with the textbook example at %s weeks', (weeks, atRiskCount, endedCount, share, shareU) => {
    const step = productLimit(TREATED)?.steps.find(({ years }) => years === weeks);
    expect(step).toMatchObject({ atRiskCount, endedCount });
    expect(step?.share).toBeCloseTo(share, 3);
    expect(step?.shareU).toBeCloseTo(shareU, 4);
  });

  it('has limits on both sides of the estimate, the wider the fewer are left', () => {
    const steps = productLimit(TREATED)?.steps ?? [];
    for (const { low, share, high } of steps) {
      expect(low).toBeLessThan(share);
      expect(high).toBeGreaterThanOrEqual(share);
    }
    const [at6, at34] = [6, 34].map((weeks) => steps.find(({ years }) => years === weeks));
    expect((at34?.high ?? 0) - (at34?.low ?? 0)).toBeGreaterThan((at6?.high ?? 1) - (at6?.low ?? 0));
  });

  // Clopper and Pearson, 7 of 10: 0.3475 to 0.9333, in every table of binomial limits.
  it('has the exact binomial limits while nobody is lost from sight', () => {
    const spans = [...[1, 2, 3].map((years) => ended(years)), ...Array<Span>(7).fill(lastSeen(9))];
    const step = productLimit(spans)?.steps.find(({ years }) => years === 3);
    expect(step?.share).toBeCloseTo(0.7, 12);
    expect(step?.low).toBeCloseTo(0.3475, 4);
    expect(step?.high).toBeCloseTo(0.9333, 4);
  });

  // With none of ten ended, the lower limit is 0.025^(1/10).
  it('does not call a share certain because nobody has ended yet', () => {
    const [first] = productLimit(Array<Span>(10).fill(lastSeen(5)))?.steps ?? [];
    expect(first).toMatchObject({ share: 1, shareU: 0, high: 1 });
    expect(first?.low).toBeCloseTo(0.025 ** 0.1, 9);
  });

  it('counts nobody before they came under observation', () => {
    const spans = [lastSeen(10), lastSeen(10), lastSeen(10), ended(6, 5), lastSeen(8, 7)];
    expect(atRiskAt(spans, 4)).toBe(3);
    expect(atRiskAt(spans, 6)).toBe(4);
    expect(productLimit(spans)?.steps.find(({ years }) => years === 6)?.share).toBeCloseTo(3 / 4, 12);
  });

  it('begins when three are under observation, and says how many ended before', () => {
    const curve = productLimit([ended(1), lastSeen(9, 2), lastSeen(9, 2), lastSeen(9, 2), ended(5, 3)]);
    expect(curve).toMatchObject({ fromYears: 2, earlierEndCount: 1 });
    expect(curve?.steps.at(-1)?.share).toBeCloseTo(3 / 4, 12);
    expect(productLimit([ended(1), lastSeen(4)])).toBeNull();
  });

  it('refuses a span that runs backwards', () => {
    expect(() => productLimit([ended(1, 2)])).toThrow(/2 to 1/);
  });
});

describe('the beta distribution', () => {
  // Closed forms: I_x(a, 1) = x^a; I_x(1, b) = 1 − (1 − x)^b; I_x(2, 3) = 6x² − 8x³ + 3x⁴; I_x(½, ½) = (2/π)·asin(√x).
  it.each([
    [0.3, 4, 1, 0.3 ** 4],
    [0.3, 1, 7, 1 - 0.7 ** 7],
    [0.6, 2, 3, 6 * 0.6 ** 2 - 8 * 0.6 ** 3 + 3 * 0.6 ** 4],
    [0.2, 0.5, 0.5, (2 / Math.PI) * Math.asin(Math.sqrt(0.2))],
  ])('at %s for a = %s, b = %s', (x, a, b, below) => {
    expect(betaBelow(x, { a, b })).toBeCloseTo(below, 11);
    expect(betaQuantile(below, { a, b })).toBeCloseTo(x, 10);
  });
});
