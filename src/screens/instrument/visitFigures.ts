/** From an instrument's visits, surveys and kept takes to what its page shows: counts per visit and comparable intervals. */
import type { SurveyId, VisitId } from '../../piano/ids.ts';
import type { InstrumentEvent, Survey, SurveyStage, Take, Visit } from '../../piano/instrument.ts';
import type { NoteReading } from '../../piano/reading.ts';
import { changeBetween, type SurveyChange } from '../../stability/change.ts';
import { medianOf } from '../../stability/changeStatistics.ts';

export type StageFigures = {
  /** The stage's latest survey: where its count leads to. */
  readonly surveyId: SurveyId;
  readonly noteCount: number;
  readonly readings: readonly NoteReading[];
};

export type VisitFigures = {
  readonly visit: Visit;
  readonly asFound: StageFigures | null;
  readonly asLeft: StageFigures | null;
};

/** Visits in the order given (oldest first), each with what its surveys hold. A survey without a kept take counts as empty. */
export function visitFigures(
  visits: readonly Visit[],
  surveys: readonly Survey[],
  keptTakes: readonly Take[],
): VisitFigures[] {
  return visits.map((visit) => ({
    visit,
    asFound: stageFigures(visit.id, 'as-found', surveys, keptTakes),
    asLeft: stageFigures(visit.id, 'as-left', surveys, keptTakes),
  }));
}

function stageFigures(
  visitId: VisitId,
  stage: SurveyStage,
  surveys: readonly Survey[],
  keptTakes: readonly Take[],
): StageFigures | null {
  const own = surveys.filter((survey) => survey.visitId === visitId && survey.stage === stage);
  const latest = own.at(-1);
  if (!latest) return null;
  const ids = new Set(own.map((survey) => survey.id));
  const readings = keptTakes.filter((take) => ids.has(take.surveyId)).map((take) => take.reading);
  return { surveyId: latest.id, readings, noteCount: new Set(readings.map((reading) => reading.midi)).size };
}

export type ChangeInterval = {
  readonly fromVisit: Visit;
  readonly toVisit: Visit;
  /** What the interval starts from: as left, or as found where the piano was not tuned. */
  readonly fromStage: SurveyStage;
  readonly before: readonly NoteReading[];
  readonly after: readonly NoteReading[];
};

/**
 * Every stretch over which the piano was left alone: from one visit's as-left to the as-found of the next that has one. A visit
 * with as-found readings only counts as not tuned, and the next stretch starts from them, unless a tuning bears its date.
 */
export function changeIntervals(
  figures: readonly VisitFigures[],
  events: readonly InstrumentEvent[],
): ChangeInterval[] {
  const tunedDates = new Set(events.filter((event) => event.kind === 'tuned').map((event) => event.happenedOn));
  const intervals: ChangeInterval[] = [];
  let baseline: Pick<ChangeInterval, 'fromVisit' | 'fromStage' | 'before'> | null = null;
  for (const { visit, asFound, asLeft } of figures) {
    const found = asFound?.readings ?? [];
    const left = asLeft?.readings ?? [];
    if (baseline && found.length > 0) intervals.push({ ...baseline, toVisit: visit, after: found });
    if (left.length > 0) baseline = { fromVisit: visit, fromStage: 'as-left', before: left };
    else if (tunedDates.has(visit.visitedOn)) baseline = null;
    else if (found.length > 0) baseline = { fromVisit: visit, fromStage: 'as-found', before: found };
  }
  return intervals;
}

export type IntervalChange = SurveyChange & { readonly medianCents: number | null };

export function intervalChange(interval: ChangeInterval): IntervalChange {
  const change = changeBetween(interval.before, interval.after);
  const cents = change.notes.map((note) => note.changeCents);
  return { ...change, medianCents: cents.length > 0 ? medianOf(cents) : null };
}

const DAYS_PER_YEAR = 365.25;

/** Length of an interval between two ISO dates. */
export function yearsBetween(fromDate: string, toDate: string): number {
  return (Date.parse(toDate.slice(0, 10)) - Date.parse(fromDate.slice(0, 10))) / (DAYS_PER_YEAR * 86_400_000);
}

/** New wire within an interval: its strings cannot be compared across it. */
export function wireWorkWithin(
  { fromVisit, toVisit }: Pick<ChangeInterval, 'fromVisit' | 'toVisit'>,
  events: readonly InstrumentEvent[],
): InstrumentEvent[] {
  return events.filter(
    ({ kind, happenedOn }) =>
      (kind === 'restrung' || kind === 'string-replaced') &&
      happenedOn > fromVisit.visitedOn &&
      happenedOn <= toVisit.visitedOn,
  );
}
