/**
 * How new wire settles: bends at hitch, bridge pins and coils set, and the whole instrument falls, less each month.
 *
 * fall(t) = A·(1 − e^(−t/τ)) + r·t since the strings were put on, fitted to the instrument's common movement; τ by trying.
 */
import { yearsBetween } from '../changeIntervals.ts';
import type { ChangeInterval } from './changeRows.ts';
import type { HistoryEvent } from './history.ts';
import { solveRidge } from './ridge.ts';

export type Settling = {
  readonly since: string;
  readonly firstYearCents: number;
  readonly remainingCentsPerYear: number;
};

/** Times tried, in years: from weeks to the two or three years in which a restrung piano comes to rest (common practice). */
const TAUS = [0.1, 0.15, 0.22, 0.33, 0.5, 0.75, 1.1, 1.7];
/** Whole-instrument movement beyond settling, of temperature, clock and season, from visit to visit. */
const MOVEMENT_CENTS = 1.5;
/** Work within this time before the first visit still shows. */
const LONGEST_SETTLING_YEARS = 4;
/** A share of the compass that has to be new for the whole instrument to count as restrung. */
const WHOLE_SPAN = 40;

/** Null where the instrument was not restrung, or so long before that nothing is left to settle. */
export function fitSettling(
  intervals: readonly ChangeInterval[],
  commonCents: Float64Array,
  events: readonly HistoryEvent[],
): Settling | null {
  const restrung = events
    .filter((event) => event.kind === 'restrung' && (event.toMidi ?? 127) - (event.fromMidi ?? 0) >= WHOLE_SPAN)
    .map((event) => event.happenedOn)
    .sort();
  const lastDate = intervals.at(-1)?.toDate;
  const since = restrung.filter((date) => lastDate === undefined || date < lastDate).at(-1);
  if (since === undefined) return null;
  const rows = intervals.flatMap((interval, k) => {
    if (!interval.hasBaseline || interval.fromDate < since) return [];
    const from = yearsBetween(since, interval.fromDate);
    return from > LONGEST_SETTLING_YEARS && intervals.length > 2
      ? []
      : [{ from, to: from + interval.years, cents: commonCents[k]! }];
  });
  if (rows.length === 0) return null;
  const fits = TAUS.map((tau) => fitWith(tau, rows)).sort((a, b) => a.cost - b.cost);
  const { tau, size, rate } = fits[0]!;
  const after = Math.max(...rows.map((row) => row.to));
  return {
    since,
    firstYearCents: -(size * (1 - Math.exp(-1 / tau))) + rate,
    remainingCentsPerYear: -(size / tau) * Math.exp(-after / tau) + rate,
  };
}

function fitWith(tau: number, rows: readonly { from: number; to: number; cents: number }[]) {
  const fallen = (row: { from: number; to: number }) => Math.exp(-row.from / tau) - Math.exp(-row.to / tau);
  const [size = 0, rate = 0] = solveRidge({
    rows: rows.map((row) => ({
      values: [-fallen(row), row.to - row.from],
      target: row.cents,
      weight: 1 / MOVEMENT_CENTS ** 2,
    })),
    priors: [
      { mean: 10, deviation: 15 },
      { mean: 0, deviation: 1 },
    ],
  });
  const misfit = rows.reduce((sum, row) => sum + (row.cents + size * fallen(row) - rate * (row.to - row.from)) ** 2, 0);
  return { tau, size, rate, cost: misfit / MOVEMENT_CENTS ** 2 + ((size - 10) / 15) ** 2 + rate ** 2 };
}
