/**
 * What new wire does to an instrument, for whoever reads its verdict: it falls for two or three years (common practice), most at first, and no
 * pin is to blame.
 */
import { yearsBetween } from '../stability/changeIntervals.ts';
import type { Drift } from '../stability/drift/analyseDrift.ts';
import type { InstrumentHistory } from '../stability/historyOfRecords.ts';

export type NewWire =
  /** Not compared since. */
  | { readonly kind: 'not seen yet'; readonly since: string }
  /** Too early to tell settling from chance: the middle string's movement so far as it was read, in cents, negative where it fell. */
  | { readonly kind: 'first year'; readonly since: string; readonly movedCents: number }
  /** Null: too little of the first year was compared. Negative: falling. */
  | {
      readonly kind: 'settling' | 'settled';
      readonly since: string;
      readonly firstYearCents: number | null;
      readonly centsPerYear: number;
    };

/** New wire is worth a word for so long after it was put on. */
const LONGEST_YEARS = 4;
/** Slower than this the wire has settled. Chosen: an owner does not hear it within some years. */
export const SETTLED_CENTS_PER_YEAR = 0.5;
/** A first year is not told from less of it. Chosen. */
const LEAST_OF_FIRST_YEAR = 0.75;
/** A share of the compass that has to be new for the whole instrument to count as restrung, as in the judgement. */
const WHOLE_SPAN = 40;

type Told = { readonly drift: Drift; readonly history: Pick<InstrumentHistory, 'events' | 'readings'> };

/** Null where the whole instrument was not restrung, or more than four years before it was last read. */
export function newWireOf({ drift, history }: Told): NewWire | null {
  const lastReadOn = history.readings.at(-1)?.visitedOn;
  const since = lastRestrungOn(history.events);
  if (lastReadOn === undefined || since === null || yearsBetween(since, lastReadOn) > LONGEST_YEARS) return null;
  const compared = drift.intervals.filter(
    ({ hasBaseline, fromDate, medianCents }) => hasBaseline && fromDate >= since && medianCents !== null,
  );
  const lastOn = compared.at(-1)?.toDate;
  const { settling } = drift;
  if (lastOn === undefined || settling?.since !== since) return { kind: 'not seen yet', since };
  const firstYear = compared.reduce((sum, { fromDate, toDate }) => sum + ofFirstYear(since, fromDate, toDate), 0);
  const isFirstYearSeen = firstYear >= LEAST_OF_FIRST_YEAR;
  if (!isFirstYearSeen && yearsBetween(since, lastOn) < 1)
    return { kind: 'first year', since, movedCents: compared.reduce((sum, one) => sum + (one.medianCents ?? 0), 0) };
  const { remainingCentsPerYear } = settling;
  return {
    kind: remainingCentsPerYear < -SETTLED_CENTS_PER_YEAR ? 'settling' : 'settled',
    since,
    firstYearCents: isFirstYearSeen ? settling.firstYearCents : null,
    centsPerYear: remainingCentsPerYear,
  };
}

function lastRestrungOn(events: InstrumentHistory['events']): string | null {
  const whole = events.filter(
    ({ kind, fromMidi, toMidi }) => kind === 'restrung' && (toMidi ?? 127) - (fromMidi ?? 0) >= WHOLE_SPAN,
  );
  return (
    whole
      .map(({ happenedOn }) => happenedOn)
      .sort()
      .at(-1) ?? null
  );
}

/** How many years of the first one after the work lie between two dates. */
function ofFirstYear(since: string, fromDate: string, toDate: string): number {
  const upTo = (date: string) => Math.min(1, yearsBetween(since, date));
  return Math.max(0, upTo(toDate) - upTo(fromDate));
}
