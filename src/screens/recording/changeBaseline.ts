/** What the notes of a survey are compared with while they come in. */
import type { SurveyId } from '../../piano/ids.ts';
import type { InstrumentEvent, Survey, Visit } from '../../piano/instrument.ts';
import type { Records } from '../../records/records.ts';
import { type BaselineReading, baselineReadings } from '../../stability/baselineReadings.ts';
import { type Interval, intervalsOf } from '../../stability/changeIntervals.ts';
import { recordedTakes } from '../../survey/recordedTakes.ts';

/** For each string where it stood last; strings whose wire or pin was touched since are not in it. */
export type ChangeBaseline = readonly BaselineReading[];

/**
 * The stretch of time that this survey's visit ends, by the rules of `intervalsOf`; null where nothing was read before. An as-left
 * survey is compared with the same as its visit's as-found.
 */
export function baselineInterval(
  survey: Survey,
  visits: readonly Visit[],
  surveys: readonly Survey[],
  events: readonly InstrumentEvent[],
): Interval | null {
  const elsewhere = surveys.filter((other) => other.visitId !== survey.visitId);
  const asFoundNow: Survey = { ...survey, stage: 'as-found' };
  return intervalsOf(visits, [...elsewhere, asFoundNow], events).find(({ to }) => to.id === survey.visitId) ?? null;
}

/** Null where there is nothing to compare with. */
export async function readChangeBaseline(records: Records, survey: Survey): Promise<ChangeBaseline | null> {
  const [visits, surveys, events] = await Promise.all([
    records.visitsOf(survey.instrumentId),
    records.surveysOfInstrument(survey.instrumentId),
    records.eventsOf(survey.instrumentId),
  ]);
  const interval = baselineInterval(survey, visits, surveys, events);
  if (!interval?.baseline.known) return null;
  const surveyIds = [interval.baseline, ...interval.earlier].flatMap((compared) => compared.surveyIds);
  const takes = await Promise.all(surveyIds.map((id) => records.takesOfSurvey(id)));
  const good = new Map(
    surveyIds.map((id, index) => [
      id,
      recordedTakes(takes[index] ?? []).kept.filter(({ reading }) => reading.quality.isUsable),
    ]),
  );
  const readingsOf = (ids: readonly SurveyId[]) =>
    ids.flatMap((id) => good.get(id) ?? []).map(({ reading }) => reading);
  const readings = baselineReadings(interval, readingsOf);
  return readings.length > 0 ? readings : null;
}
