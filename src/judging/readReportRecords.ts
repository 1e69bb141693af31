import type { InstrumentId } from '../piano/ids.ts';
import type { Records } from '../records/records.ts';
import type { ReportRecords } from '../report/reportRecords.ts';
import { recordedTakes } from '../survey/recordedTakes.ts';

/** What the pages for owners and colleagues are made from; null where there is no such instrument. */
export async function readReportRecords(records: Records, instrumentId: InstrumentId): Promise<ReportRecords | null> {
  const instrument = await records.instrument(instrumentId);
  if (!instrument) return null;
  const [visits, surveys, events, decisions] = await Promise.all([
    records.visitsOf(instrumentId),
    records.surveysOfInstrument(instrumentId),
    records.eventsOf(instrumentId),
    records.decisionsOf(instrumentId),
  ]);
  const perSurvey = await Promise.all(surveys.map((survey) => records.takesOfSurvey(survey.id)));
  const takes = perSurvey.flatMap((ofSurvey) => recordedTakes(ofSurvey).kept);
  return { instrument, visits, surveys, events, decisions, takes };
}
