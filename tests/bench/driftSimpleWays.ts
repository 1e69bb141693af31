/** Two simple ways of finding slipping pins, to hold ours against: each gives every string a figure, and flags from a limit on. */
import type { ChangeTable } from '../../src/stability/drift/changeRows.ts';

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

const NEIGHBOURS = 10;

/**
 * The neighbours' way: each string's change less the median of those within ten notes on either side, and a robust rate through the
 * origin (the median of the slopes, each weighing with its years). The figure is how far that falls, in cents a year.
 */
export function neighbourFigures({ strings, intervals, changes }: ChangeTable): SimpleFigures {
  const byInterval = intervals.map(() => new Map<number, number>());
  for (const { stringIndex, intervalIndex, cents } of changes) byInterval[intervalIndex]!.set(stringIndex, cents);
  const around = strings.map(({ midi }, i) =>
    strings.map((_, j) => j).filter((j) => j !== i && Math.abs(strings[j]!.midi - midi) <= NEIGHBOURS),
  );
  const slopes = strings.map((): { slope: number; weight: number }[] => []);
  byInterval.forEach((row, k) => {
    for (const [i, cents] of row) {
      const others = around[i]!.flatMap((j) => row.get(j) ?? []).sort((a, b) => a - b);
      const { years } = intervals[k]!;
      if (others.length > 0) slopes[i]!.push({ slope: (cents - others[others.length >> 1]!) / years, weight: years });
    }
  });
  return Float64Array.from(slopes, (own) => -weightedMedian(own));
}

function weightedMedian(values: { slope: number; weight: number }[]): number {
  const sorted = values.sort((a, b) => a.slope - b.slope);
  const half = sorted.reduce((sum, { weight }) => sum + weight, 0) / 2;
  let below = 0;
  for (const { slope, weight } of sorted) {
    below += weight;
    if (below >= half) return slope;
  }
  return 0;
}
