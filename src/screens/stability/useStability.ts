import type { InstrumentId } from '../../piano/ids.ts';
import type { Instrument, InstrumentEvent } from '../../piano/instrument.ts';
import type { Records } from '../../records/records.ts';
import { historyOfRecords, type InstrumentHistory } from '../../stability/historyOfRecords.ts';
import { recordedTakes } from '../../survey/recordedTakes.ts';
import { type Observed, useObserved } from '../../ui/useObserved.ts';

export type StabilityPage = {
  readonly instrument: Instrument;
  readonly events: readonly InstrumentEvent[];
  readonly visitCount: number;
  readonly history: InstrumentHistory;
};

export function useStability(records: Records, instrumentId: InstrumentId): Observed<StabilityPage | null> {
  return useObserved<StabilityPage | null>(`stability ${instrumentId}`, (onValue, onFault) =>
    records.observe(() => readStability(records, instrumentId), onValue, onFault),
  );
}

async function readStability(records: Records, instrumentId: InstrumentId): Promise<StabilityPage | null> {
  const instrument = await records.instrument(instrumentId);
  if (!instrument) return null;
  const [visits, surveys, events] = await Promise.all([
    records.visitsOf(instrumentId),
    records.surveysOfInstrument(instrumentId),
    records.eventsOf(instrumentId),
  ]);
  const perSurvey = await Promise.all(surveys.map((survey) => records.takesOfSurvey(survey.id)));
  const takes = perSurvey.flatMap((ofSurvey) => recordedTakes(ofSurvey).kept);
  const history = historyOfRecords({ instrument, visits, surveys, takes, events });
  return { instrument, events, visitCount: visits.length, history };
}
