/** What would settle an open question about the pin block: further visits, humidity, torque readings on which pins. */
import { medianOf } from '../piano/robustStatistics.ts';
import type { Drift } from './drift/analyseDrift.ts';
import type { StringAddress } from './driftViews.ts';

export type NextEvidence =
  /** No as-left survey is followed by an as-found one. */
  | { readonly kind: 'both-surveys' }
  /** A slip has to repeat itself. */
  | { readonly kind: 'more-intervals'; readonly visitCount: number }
  /** Enough visits, but too close together. */
  | { readonly kind: 'more-time'; readonly months: number }
  /** So many visits, at this instrument's usual distance, until a slip that matters can be ruled out; null: more than is sensible. */
  | { readonly kind: 'narrow'; readonly visitCount: number | null; readonly monthsApart: number }
  | { readonly kind: 'note-humidity' }
  /** Measure these pins' torque, and their neighbours' for comparison. */
  | { readonly kind: 'torque'; readonly pins: readonly StringAddress[]; readonly isFlagged: boolean };

const LEAST_INTERVALS = 3;
const LEAST_YEARS = 0.75;
/** A pin is worth a torque reading from this probability of slipping on. Chosen: it costs a minute. */
export const WORTH_A_LOOK = 0.3;
const MOST_VISITS = 20;
const MOST_PINS = 24;

/** In the order of what helps most; empty where nothing is open. */
export function nextEvidence(drift: Drift, thresholdCentsPerYear: number): NextEvidence[] {
  const usable = drift.intervals.filter((interval) => interval.hasBaseline);
  const years = usable.reduce((sum, interval) => sum + interval.years, 0);
  const steps: NextEvidence[] = [];
  if (usable.length === 0) return [{ kind: 'both-surveys' }];
  const torque = torqueStep(drift);
  if (torque) steps.push(torque);
  if (usable.length < LEAST_INTERVALS)
    steps.push({ kind: 'more-intervals', visitCount: LEAST_INTERVALS - usable.length });
  else if (years < LEAST_YEARS) steps.push({ kind: 'more-time', months: Math.ceil(12 * (LEAST_YEARS - years)) });
  else {
    const narrow = narrowStep(drift, usable, thresholdCentsPerYear);
    if (narrow) steps.push(narrow);
  }
  if (!drift.detail.isHumidityKnown) steps.push({ kind: 'note-humidity' });
  return steps;
}

function torqueStep({ pins }: Drift): NextEvidence | null {
  const worth = pins
    .filter((pin) => pin.isFlagged || (pin.slip.probability ?? 0) >= WORTH_A_LOOK)
    .sort((a, b) => Number(b.isFlagged) - Number(a.isFlagged) || (b.slip.probability ?? 0) - (a.slip.probability ?? 0))
    .slice(0, MOST_PINS);
  if (worth.length === 0) return null;
  const isFlagged = worth.some((pin) => pin.isFlagged);
  return { kind: 'torque', isFlagged, pins: worth.map(({ midi, stringPosition }) => ({ midi, stringPosition })) };
}

/** A rate's uncertainty falls with the root of the sum of squared years, so that many more intervals as now are needed. */
function narrowStep(
  drift: Drift,
  usable: readonly { readonly years: number }[],
  thresholdCentsPerYear: number,
): NextEvidence | null {
  const ruledOut = drift.verdict.slipRuledOutAboveCentsPerYear;
  if (ruledOut !== null && ruledOut <= thresholdCentsPerYear) return null;
  const usualYears = medianOf(usable.map((interval) => interval.years));
  const monthsApart = Math.max(1, Math.round(12 * usualYears));
  if (ruledOut === null) return { kind: 'narrow', visitCount: null, monthsApart };
  const told = usable.reduce((sum, interval) => sum + interval.years ** 2, 0);
  const missing = told * ((ruledOut / thresholdCentsPerYear) ** 2 - 1);
  const count = Math.ceil(missing / Math.max(usualYears ** 2, 1e-6));
  return { kind: 'narrow', visitCount: count > MOST_VISITS ? null : Math.max(1, count), monthsApart };
}

/** How sure a judgement of slipping is: the probability that at least one of the strings or zones named is real; null where none is. */
export function slipCertainty({ pins, zones }: Pick<Drift, 'pins' | 'zones'>): number | null {
  const named = [
    ...zones.map((zone) => zone.probability),
    ...pins.filter((pin) => pin.isFlagged).map((pin) => pin.slip.probability ?? 0),
  ];
  if (named.length === 0) return null;
  return 1 - named.reduce((doubt, probability) => doubt * (1 - probability), 1);
}

/** The fastest slip that a string's record leaves possible at 95 %, cents a year, nought or below; null where it is not known. */
export function fastestPossibleSlip(slip: Drift['pins'][number]['slip']): number | null {
  if (slip.centsPerYear === null || slip.standardUncertainty === null) return null;
  return Math.min(0, slip.centsPerYear - ONE_SIDED_95 * slip.standardUncertainty);
}

/** Standing: definition, the standard normal's 95th percentile. */
const ONE_SIDED_95 = 1.645;
