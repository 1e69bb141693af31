/** What the notes of a survey are compared with while they come in. */
import type { SurveyId } from '../../piano/ids.ts';
import type { InstrumentEvent, Survey, SurveyStage, Visit } from '../../piano/instrument.ts';
import type { NoteReading } from '../../piano/reading.ts';
import type { Records } from '../../records/records.ts';
import { intervalsOf, type StartedAnew } from '../../stability/changeIntervals.ts';

export type ChangeBaseline = {
  readonly visitedOn: string;
  readonly stage: SurveyStage;
  /** Kept takes only; notes whose wire or pin was touched since are not in it. */
  readonly readings: readonly NoteReading[];
};

type BaselineSurveys = Omit<ChangeBaseline, 'readings'> & {
  readonly surveyIds: readonly SurveyId[];
  readonly startedAnew: readonly StartedAnew[];
};

/**
 * The surveys that count as the last state of the piano before this visit, by the rules of `intervalsOf`; null where there are
 * none, or where the piano was tuned since. An as-left survey is compared with the same as its visit's as-found.
 */
export function baselineSurveys(
  survey: Survey,
  visits: readonly Visit[],
  surveys: readonly Survey[],
  events: readonly InstrumentEvent[],
): BaselineSurveys | null {
  const elsewhere = surveys.filter((other) => other.visitId !== survey.visitId);
  const asFoundNow: Survey = { ...survey, stage: 'as-found' };
  const interval = intervalsOf(visits, [...elsewhere, asFoundNow], events).find(({ to }) => to.id === survey.visitId);
  if (!interval?.baseline.known) return null;
  const { stage, surveyIds } = interval.baseline;
  return { visitedOn: interval.from.visitedOn, stage, surveyIds, startedAnew: interval.startedAnew };
}

/** Null where there is nothing to compare with. */
export async function readChangeBaseline(records: Records, survey: Survey): Promise<ChangeBaseline | null> {
  const [visits, surveys, events] = await Promise.all([
    records.visitsOf(survey.instrumentId),
    records.surveysOfInstrument(survey.instrumentId),
    records.eventsOf(survey.instrumentId),
  ]);
  const baseline = baselineSurveys(survey, visits, surveys, events);
  if (!baseline) return null;
  const takes = (await Promise.all(baseline.surveyIds.map((id) => records.takesOfSurvey(id)))).flat();
  const readings = takes
    .filter(({ isKept, reading }) => isKept && reading.quality.isUsable && !isAnew(reading.midi, baseline.startedAnew))
    .map((take) => take.reading);
  return { visitedOn: baseline.visitedOn, stage: baseline.stage, readings };
}

function isAnew(midi: number, startedAnew: readonly StartedAnew[]): boolean {
  return startedAnew.some(
    ({ fromMidi, toMidi }) =>
      midi >= (fromMidi ?? Number.NEGATIVE_INFINITY) && midi <= (toMidi ?? Number.POSITIVE_INFINITY),
  );
}
