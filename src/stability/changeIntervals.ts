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
  /** For strings that the baseline did not read: where they stood before it, newest first. */
  readonly earlier: readonly EarlierBaseline[];
};

/** An older survey that nothing done since has taken its meaning. */
export type EarlierBaseline = Pick<
  Interval,
  'from' | 'years' | 'humidityChangePct' | 'temperatureChangeC' | 'startedAnew'
> & { readonly stage: SurveyStage; readonly surveyIds: readonly SurveyId[] };

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
 *
 * A string that the baseline did not read (a sample, a section, a skipped note) is compared with where it stood before, in `earlier`,
 * as long as nothing was tuned in between. A `tuned` event on the day of an as-left survey says what was tuned then. Where there
 * is none the survey says it itself: of a section or of chosen notes, those; else the whole piano, for which a sample stands.
 * @param events of the same instrument; events of single notes take only those notes out of the comparison
 */
export function intervalsOf(
  visits: readonly Visit[],
  surveys: readonly Survey[],
  events: readonly InstrumentEvent[] = [],
): Interval[] {
  const inOrder = [...visits].sort((a, b) => compareText(a.visitedOn, b.visitedOn) || compareText(a.id, b.id));
  const work = events.filter(({ kind }) => STARTS_ANEW.includes(kind)).map(workOfEvent);
  const intervals: Interval[] = [];
  const past: Read[] = [];
  for (const visit of inOrder) {
    const asFound = surveysOf(surveys, visit, 'as-found');
    const asLeft = surveysOf(surveys, visit, 'as-left');
    if (past.length > 0 && asFound.length > 0) intervals.push(...intervalTo(visit, asFound.map(idOf), past, work));
    if (asFound.length > 0) past.push({ visit, stage: 'as-found', surveyIds: asFound.map(idOf) });
    if (asLeft.length > 0) past.push({ visit, stage: 'as-left', surveyIds: asLeft.map(idOf) });
    if (!events.some((event) => event.kind === 'tuned' && event.happenedOn === visit.visitedOn))
      work.push(...asLeft.flatMap(tunedBy).map((notes) => ({ ...notes, doneOn: visit.visitedOn })));
  }
  return intervals;
}

/** The events that took strings out of an interval's comparison; none where its baseline is unknown. */
export function workWithin(
  { from, to, baseline }: Pick<Interval, 'from' | 'to' | 'baseline'>,
  events: readonly InstrumentEvent[],
): InstrumentEvent[] {
  if (!baseline.known) return [];
  const { stage } = baseline;
  return events.filter((event) => STARTS_ANEW.includes(event.kind) && isBetween(workOfEvent(event), from, stage, to));
}

/** The strings of a visit's stage as they were then. */
type Read = { readonly visit: Visit; readonly stage: SurveyStage; readonly surveyIds: readonly SurveyId[] };

/** Strings that were tuned or made new on a day. */
type Work = StartedAnew & { readonly doneOn: string };

const STARTS_ANEW: readonly InstrumentEvent['kind'][] = ['tuned', 'restrung', 'string-replaced', 'pin-replaced'];

const WHOLE_PIANO: StartedAnew = { fromMidi: null, toMidi: null };

function workOfEvent({ happenedOn, fromMidi, toMidi }: InstrumentEvent): Work {
  return { doneOn: happenedOn, fromMidi, toMidi };
}

function tunedBy({ scope }: Survey): StartedAnew[] {
  if (scope === undefined || scope.kind === 'sample') return [WHOLE_PIANO];
  if (scope.kind === 'section') return [{ fromMidi: scope.fromMidi, toMidi: scope.toMidi }];
  return scope.notesMidi.map((midi) => ({ fromMidi: midi, toMidi: midi }));
}

function surveysOf(surveys: readonly Survey[], visit: Visit, stage: SurveyStage): Survey[] {
  return surveys.filter((survey) => survey.visitId === visit.id && survey.stage === stage);
}

function idOf(survey: Survey): SurveyId {
  return survey.id;
}

/** @param past oldest first */
function intervalTo(
  to: Visit,
  asFoundSurveyIds: readonly SurveyId[],
  past: readonly Read[],
  work: readonly Work[],
): Interval[] {
  const [newest, ...older] = past.map((read) => comparedWith(read, to, work)).reverse();
  if (!newest) return [];
  const { stage, surveyIds, ...rest } = newest;
  const baseline: Baseline = newest.startedAnew.some(isWholePiano)
    ? { known: false, reason: 'tuned-after-the-last-survey' }
    : { known: true, stage, surveyIds };
  const lostFrom = older.findIndex(({ startedAnew }) => startedAnew.some(isWholePiano));
  const earlier = older.slice(0, lostFrom === -1 ? older.length : lostFrom);
  return [{ ...rest, to, baseline, asFoundSurveyIds, earlier }];
}

function comparedWith({ visit: from, stage, surveyIds }: Read, to: Visit, work: readonly Work[]): EarlierBaseline {
  const between = work.filter((done) => isBetween(done, from, stage, to));
  return {
    from,
    stage,
    surveyIds,
    years: yearsBetween(from.visitedOn, to.visitedOn),
    humidityChangePct: difference(to.humidityPct, from.humidityPct),
    temperatureChangeC: difference(to.temperatureC, from.temperatureC),
    startedAnew: between.map(({ fromMidi, toMidi }) => ({ fromMidi, toMidi })),
  };
}

function isWholePiano({ fromMidi, toMidi }: StartedAnew): boolean {
  return fromMidi === null && toMidi === null;
}

/**
 * Whether work was done after a survey and before the one now. On the day of the survey before it came before an as-left survey
 * and after an as-found one; on the day of the one now it came after it, since as found means before any work.
 */
function isBetween({ doneOn }: Work, from: Visit, stage: SurveyStage, to: Visit): boolean {
  const isAfter = doneOn > from.visitedOn || (doneOn === from.visitedOn && stage === 'as-found');
  return isAfter && doneOn < to.visitedOn;
}

function difference(now: number | null, before: number | null): number | null {
  return now === null || before === null ? null : now - before;
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
