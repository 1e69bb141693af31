import type { InstrumentId } from '../../piano/ids.ts';
import type { Instrument, InstrumentEvent } from '../../piano/instrument.ts';
import type { Records } from '../../records/records.ts';
import { historyOfRecords, type InstrumentHistory } from '../../stability/historyOfRecords.ts';
import { type PinTorque, pinTorques } from '../../stability/torquePins.ts';
import { recordedTakes } from '../../survey/recordedTakes.ts';
import { type Observed, useObserved } from '../../ui/useObserved.ts';

export type StabilityPage = {
  readonly instrument: Instrument;
  readonly events: readonly InstrumentEvent[];
  readonly visitCount: number;
  readonly history: InstrumentHistory;
  /** Of the latest visit at which pins were read. */
  readonly torques: readonly PinTorque[];
};

export function useStability(records: Records, instrumentId: InstrumentId): Observed<StabilityPage | null> {
  return useObserved<StabilityPage | null>(`stability ${instrumentId}`, (onValue, onFault) =>
    records.observe(() => readStability(records, instrumentId), onValue, onFault),
  );
}

async function readStability(records: Records, instrumentId: InstrumentId): Promise<StabilityPage | null> {
  const instrument = await records.instrument(instrumentId);
  if (!instrument) return null;
  const [visits, surveys, events, torqueReadings] = await Promise.all([
    records.visitsOf(instrumentId),
    records.surveysOfInstrument(instrumentId),
    records.eventsOf(instrumentId),
    records.torquesOf(instrumentId),
  ]);
  const perSurvey = await Promise.all(surveys.map((survey) => records.takesOfSurvey(survey.id)));
  const takes = perSurvey.flatMap((ofSurvey) => recordedTakes(ofSurvey).kept);
  const history = historyOfRecords({ instrument, visits, surveys, takes, events });
  const latest = visits.findLast((visit) => torqueReadings.some((reading) => reading.visitId === visit.id));
  const torques = pinTorques(torqueReadings.filter((reading) => reading.visitId === latest?.id));
  return { instrument, events, visitCount: visits.length, history, torques };
}
