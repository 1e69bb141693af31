/** How a failing zone's rate may run over the years: from some visit on, evenly or growing. */
import type { ChangeInterval } from './changeRows.ts';

export type ZonePattern = {
  readonly fromInterval: number;
  readonly isGrowing: boolean;
  /** By interval: cents for a mean rate of one cent a year since the beginning. */
  readonly course: Float64Array;
};

/** Later parts of the history that are tried by themselves, as shares of it: four intervals at least. */
const BEGINNINGS = [0, 0.2, 0.35, 0.5, 0.65];
const LEAST_INTERVALS = 4;
/** A growing zone's rate, after so many years, is twice what it began with. */
const DOUBLING_YEARS = 2.5;
export function zonePatterns(intervals: readonly ChangeInterval[]): ZonePattern[] {
  const all = BEGINNINGS.map((share) => Math.round(share * intervals.length));
  const beginnings = [...new Set(all)].filter((from) => from === 0 || intervals.length - from >= LEAST_INTERVALS);
  return beginnings.flatMap((fromInterval) =>
    [false, true].map((isGrowing) => ({
      fromInterval,
      isGrowing,
      course: courseOfYears(intervals, fromInterval, isGrowing),
    })),
  );
}

function courseOfYears(intervals: readonly ChangeInterval[], fromInterval: number, isGrowing: boolean): Float64Array {
  let elapsed = 0;
  const grown = intervals.map(({ years }, k) => {
    if (k < fromInterval) return 0;
    const middle = elapsed + 0.5 * years;
    elapsed += years;
    return isGrowing ? years * (1 + middle / DOUBLING_YEARS) : years;
  });
  const total = grown.reduce((sum, value) => sum + value, 0);
  return Float64Array.from(grown, (value) => (value * elapsed) / Math.max(total, 1e-9));
}
