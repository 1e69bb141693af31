/** A stretch of notes over the intervals: its own scatter, and whether its rate grows. */
import type { ChangeInterval } from './changeRows.ts';
import { solveRidge } from './ridge.ts';
import type { NoteGrid } from './zoneGrid.ts';
import type { ZonePattern } from './zonePatterns.ts';

export type StretchChange = {
  readonly intervalIndex: number;
  readonly years: number;
  readonly cents: number;
  readonly variance: number;
};

export function stretchChanges(
  grid: NoteGrid,
  intervals: readonly ChangeInterval[],
  stretch: { readonly first: number; readonly last: number },
): StretchChange[] {
  return intervals.flatMap(({ years }, k) => {
    let top = 0;
    let weight = 0;
    for (let n = stretch.first; n <= stretch.last; n++) {
      const variance = grid.variances[n]![k]!;
      if (!Number.isFinite(variance)) continue;
      top += grid.means[n]![k]! / variance;
      weight += 1 / variance;
    }
    return weight > 0 ? [{ intervalIndex: k, years, cents: top / weight, variance: 1 / weight }] : [];
  });
}

/**
 * Uncertainty of the rate along a pattern from how the stretch varies between intervals, what goes with the season set aside: weather that
 * moves the whole stretch shows there.
 */
export function stretchRate(
  changes: readonly StretchChange[],
  { course, fromInterval }: ZonePattern,
  seasons: Float64Array,
): { readonly uncertainty: number; readonly freedom: number } {
  const used = changes.filter(({ intervalIndex }) => intervalIndex >= fromInterval);
  const [rate = 0, response = 0] = solveRidge({
    rows: used.map(({ intervalIndex: k, cents }) => ({
      values: [course[k]!, seasons[k]!],
      target: cents,
      weight: 1 / SCATTER_CENTS ** 2,
    })),
    priors: [
      { mean: 0, deviation: 100 },
      { mean: 0, deviation: STRAYED_RESPONSE },
    ],
  });
  const squares = used.reduce((sum, { intervalIndex }) => sum + course[intervalIndex]! ** 2, 0);
  const scatter = used.reduce(
    (sum, { intervalIndex: k, cents }) => sum + (cents - rate * course[k]! - response * seasons[k]!) ** 2,
    0,
  );
  const freedom = Math.max(1, used.length - 2);
  return { uncertainty: Math.sqrt(scatter / freedom / squares), freedom };
}

/** Usual scatter of a stretch's mean between intervals, and how far its response may lie off the course of responses (cents per %RH). */
const SCATTER_CENTS = 0.3;
const STRAYED_RESPONSE = 0.15;

/**
 * How many times the rate has to exceed its scatter over many intervals; the fewer there are, the more, as with Student's t at one in
 * three hundred (2.75·(1 + 3.4/ν) lies within 5 % of its quantile for ν from 4 to 30).
 */
const STEADINESS = 2.75;

export function isSteady(times: number, freedom: number): boolean {
  return times >= STEADINESS * (1 + 3.4 / freedom);
}

/** Whether the rate's magnitude grows: weighted slope of rate against time, two standard deviations below nought. */
export function growsWithTime(changes: readonly StretchChange[], intervals: readonly ChangeInterval[]): boolean {
  if (changes.length < 4) return false;
  let elapsed = 0;
  const ends = intervals.map((interval) => (elapsed += interval.years));
  const points = changes.map(({ intervalIndex, years, cents, variance }) => ({
    time: ends[intervalIndex]! - 0.5 * years,
    rate: cents / years,
    weight: years ** 2 / (variance + 0.3 ** 2),
  }));
  const total = points.reduce((sum, point) => sum + point.weight, 0);
  const middle = points.reduce((sum, point) => sum + point.weight * point.time, 0) / total;
  const spread = points.reduce((sum, point) => sum + point.weight * (point.time - middle) ** 2, 0);
  const slope = points.reduce((sum, point) => sum + point.weight * (point.time - middle) * point.rate, 0) / spread;
  return slope < -2 / Math.sqrt(spread);
}
