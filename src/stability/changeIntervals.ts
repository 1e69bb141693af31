/** Which survey is compared with which: drift is what happened between one as-left and the next as-found. */

import type { SurveyId } from '../piano/ids.ts';
import type { InstrumentEvent, Survey, SurveyStage, Visit } from '../piano/instrument.ts';

export type Baseline =
  | { readonly known: true; readonly stage: SurveyStage; readonly surveyIds: readonly SurveyId[] }
  /** The piano was tuned or restrung after it was last read: only what shows across notes can be used. */
  | { readonly known: false; readonly reason: 'tuned-after-the-last-survey' };

/** Notes whose strings were tuned or changed in between, so that their own change says nothing. Null: to the compass's end. */
export type StartedAnew = { readonly fromMidi: number | null; readonly toMidi: number | null };

export type Interval = {
  readonly from: Visit;
  readonly to: Visit;
  readonly years: number;
  /** Null where either visit has no reading. */
  readonly humidityChangePct: number | null;
  readonly temperatureChangeC: number | null;
  readonly baseline: Baseline;
  /** The as-found surveys of `to`: more than one where the strings were surveyed one position at a time. */
  readonly asFoundSurveyIds: readonly SurveyId[];
  readonly startedAnew: readonly StartedAnew[];
};

/** Mean length of a year in days (Gregorian calendar: 365.2425; the Julian 365.25 is usual and 20 ppm away). */
const DAYS_PER_YEAR = 365.25;
const MS_PER_DAY = 86_400_000;

/** @throws {RangeError} if a date is not an ISO 8601 calendar date */
export function yearsBetween(fromDate: string, toDate: string): number {
  const days = (dayOf(toDate) - dayOf(fromDate)) / MS_PER_DAY;
  return days / DAYS_PER_YEAR;
}

function dayOf(date: string): number {
  const time = /^\d{4}-\d{2}-\d{2}$/.test(date) ? Date.parse(date) : Number.NaN;
  if (Number.isNaN(time)) throw new RangeError(`date must be an ISO 8601 calendar date, got ${date}`);
  return time;
}

/**
 * Pairs each baseline with the next as-found survey, oldest first. The baseline is the as-left survey of the last visit that
 * read the piano. A visit with only as-found surveys counts as not tuned, so the next interval starts from its as-found; but
 * where a `tuned` event bears its date, or lies between, there is no baseline. A visit with no as-found ends no interval.
 * @param events of the same instrument; events of single notes take only those notes out of the comparison
 */
export function intervalsOf(
  visits: readonly Visit[],
  surveys: readonly Survey[],
  events: readonly InstrumentEvent[] = [],
): Interval[] {
  const inOrder = [...visits].sort((a, b) => compareText(a.visitedOn, b.visitedOn) || compareText(a.id, b.id));
  const intervals: Interval[] = [];
  let last: Read | undefined;
  for (const visit of inOrder) {
    const asFound = idsOf(surveys, visit, 'as-found');
    const asLeft = idsOf(surveys, visit, 'as-left');
    if (last && asFound.length > 0) intervals.push(intervalOf(last, visit, asFound, events));
    if (asLeft.length > 0) last = { visit, stage: 'as-left', surveyIds: asLeft };
    else if (asFound.length > 0) last = { visit, stage: 'as-found', surveyIds: asFound };
  }
  return intervals;
}

type Read = { readonly visit: Visit; readonly stage: SurveyStage; readonly surveyIds: readonly SurveyId[] };

function idsOf(surveys: readonly Survey[], visit: Visit, stage: SurveyStage): SurveyId[] {
  return surveys.filter((survey) => survey.visitId === visit.id && survey.stage === stage).map((survey) => survey.id);
}

function intervalOf(
  last: Read,
  visit: Visit,
  asFoundSurveyIds: readonly SurveyId[],
  events: readonly InstrumentEvent[],
): Interval {
  const breaking = events.filter((event) => breaksBaseline(event, last, visit));
  const isBroken = breaking.some((event) => event.fromMidi === null && event.toMidi === null);
  const { visit: from, stage, surveyIds } = last;
  return {
    from,
    to: visit,
    years: yearsBetween(from.visitedOn, visit.visitedOn),
    humidityChangePct: difference(visit.humidityPct, from.humidityPct),
    temperatureChangeC: difference(visit.temperatureC, from.temperatureC),
    baseline: isBroken ? { known: false, reason: 'tuned-after-the-last-survey' } : { known: true, stage, surveyIds },
    asFoundSurveyIds,
    startedAnew: breaking.map(({ fromMidi, toMidi }) => ({ fromMidi, toMidi })),
  };
}

const STARTS_ANEW: readonly InstrumentEvent['kind'][] = ['tuned', 'restrung', 'string-replaced', 'pin-replaced'];

/**
 * Whether an event came after the last survey and before the one now. On the day of the last survey the work came before an
 * as-left survey and after an as-found one; on the day of the one now it came after it, since as found means before any work.
 */
function breaksBaseline(event: InstrumentEvent, last: Read, visit: Visit): boolean {
  if (!STARTS_ANEW.includes(event.kind)) return false;
  const isAfterLast =
    event.happenedOn > last.visit.visitedOn || (event.happenedOn === last.visit.visitedOn && last.stage === 'as-found');
  return isAfterLast && event.happenedOn < visit.visitedOn;
}

function difference(now: number | null, before: number | null): number | null {
  return now === null || before === null ? null : now - before;
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
