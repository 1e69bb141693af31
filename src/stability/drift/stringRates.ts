/** Each string's steady rate over a stretch of its intervals, with its uncertainty. */
import type { ChangeInterval, ChangeRow } from './changeTable.ts';
import { robustDeviation, studentWeight } from './statistics.ts';

export type StringRate = {
  /** Cents a year; null where the stretch holds no change of this string. */
  readonly centsPerYear: number | null;
  readonly standardUncertainty: number;
  readonly changeCount: number;
};

const TURNS = 8;

/**
 * Slope through the origin of own change against years, with Student-t weights.
 * @param fromInterval changes of earlier intervals are left aside
 */
export function stringRates(
  stringCount: number,
  intervals: readonly ChangeInterval[],
  changes: readonly ChangeRow[],
  ownCents: Float64Array,
  sigmas: Float64Array,
  fromInterval = 0,
): StringRate[] {
  const byString: number[][] = Array.from({ length: stringCount }, () => []);
  changes.forEach((row, index) => {
    if (row.intervalIndex >= fromInterval) byString[row.stringIndex]!.push(index);
  });
  return byString.map((list) => rateOf(list, intervals, changes, ownCents, sigmas));
}

function rateOf(
  list: readonly number[],
  intervals: readonly ChangeInterval[],
  changes: readonly ChangeRow[],
  ownCents: Float64Array,
  sigmas: Float64Array,
): StringRate {
  if (list.length === 0) return { centsPerYear: null, standardUncertainty: Infinity, changeCount: 0 };
  const yearsOf = (index: number) => intervals[changes[index]!.intervalIndex]!.years;
  let rate = 0;
  let information = 0;
  for (let turn = 0; turn < TURNS; turn++) {
    let top = 0;
    information = 0;
    let plain = 0;
    for (const index of list) {
      const years = yearsOf(index);
      const sigma = sigmas[index]!;
      // With few changes no single one is an outlier by itself.
      const off = (ownCents[index]! - rate * years) / sigma;
      const trust = list.length < 4 ? 1 : Math.min(1, studentWeight(off));
      top += (trust * years * ownCents[index]!) / sigma ** 2;
      information += (trust * years * years) / sigma ** 2;
      plain += (years * years) / sigma ** 2;
    }
    rate = top / information;
    information = 0.5 * (information + plain);
  }
  const excess = ownScatter(list.map((index) => (ownCents[index]! - rate * yearsOf(index)) / sigmas[index]!));
  return { centsPerYear: rate, standardUncertainty: excess / Math.sqrt(information), changeCount: list.length };
}

/** How many changes the whole compass' noise counts for against a string's own. */
const COMMON_FREEDOM = 8;

/** Factor by which a string's own changes scatter more than usual, leaning on 1 where they are few. A much-played string moves more. */
function ownScatter(standardised: readonly number[]): number {
  const squares = standardised.reduce((sum, value) => sum + Math.min(9, value * value), 0);
  return Math.sqrt(Math.max(0.8, (COMMON_FREEDOM + squares) / (COMMON_FREEDOM + Math.max(1, standardised.length - 1))));
}

/** Factor by which the rates' scatter exceeds what their uncertainties say, most strings being steady; at least 0.85. */
export function scatterFactor(standardised: readonly number[]): number {
  if (standardised.length < 8) return 1;
  return Math.min(2.5, Math.max(0.85, robustDeviation(standardised)));
}
