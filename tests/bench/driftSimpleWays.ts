/** Two simple ways of finding slipping pins, to hold ours against: each gives every string a figure, and flags from a limit on. */
import type { ChangeTable } from '../../src/stability/drift/changeRows.ts';

const NEIGHBOURS = 10;

/** By string: the larger, the more it is thought to slip. */
export type SimpleFigures = Float64Array;

/**
 * The spreadsheet's way: flag what moved flat by more than so many cents between two visits, at least twice. The figure is the
 * second largest fall.
 */
export function spreadsheetFigures({ strings, changes }: ChangeTable): SimpleFigures {
  const falls = strings.map((): number[] => []);
  for (const { stringIndex, cents } of changes) falls[stringIndex]!.push(-cents);
  return Float64Array.from(falls, (own) => own.sort((a, b) => b - a)[1] ?? -Infinity);
}

/** How far a string falls behind its neighbours, cents a year, and how many of its own standard errors that is. */
export type NeighbourFigure = { readonly centsPerYear: number; readonly errors: number };

/**
 * The neighbours' way: each string's change less the median of those within ten notes on either side (left with left strings, centre with
 * centre, right with right), and a robust rate through the
 * origin (the median of the slopes, each weighing with its years). Its standard error is that of a median, 1.25·s/√n, with s from the
 * median distance of the slopes from it.
 */
export function neighbourFigures({ strings, intervals, changes }: ChangeTable): NeighbourFigure[] {
  const byInterval = intervals.map(() => new Map<number, number>());
  for (const { stringIndex, intervalIndex, cents } of changes) byInterval[intervalIndex]!.set(stringIndex, cents);
  const around = strings.map(({ midi, stringPosition }, i) =>
    strings.flatMap((other, j) => {
      const isNear = j !== i && Math.abs(other.midi - midi) <= NEIGHBOURS;
      return isNear && other.stringPosition === stringPosition ? [j] : [];
    }),
  );
  const slopes = strings.map((): WeightedValue[] => []);
  byInterval.forEach((row, k) => {
    for (const [i, cents] of row) {
      const others = around[i]!.flatMap((j) => row.get(j) ?? []).sort((a, b) => a - b);
      const { years } = intervals[k]!;
      if (others.length > 0) slopes[i]!.push({ value: (cents - others[others.length >> 1]!) / years, weight: years });
    }
  });
  return slopes.map((own) => {
    const slope = weightedMedian(own);
    const distance = weightedMedian(own.map(({ value, weight }) => ({ value: Math.abs(value - slope), weight })));
    const error = (1.25 * 1.4826 * distance) / Math.sqrt(Math.max(1, own.length));
    return { centsPerYear: -slope, errors: error > 0 ? -slope / error : 0 };
  });
}

type WeightedValue = { readonly value: number; readonly weight: number };

function weightedMedian(values: readonly WeightedValue[]): number {
  const sorted = [...values].sort((a, b) => a.value - b.value);
  const half = sorted.reduce((sum, { weight }) => sum + weight, 0) / 2;
  let below = 0;
  for (const { value, weight } of sorted) {
    below += weight;
    if (below >= half) return value;
  }
  return 0;
}
