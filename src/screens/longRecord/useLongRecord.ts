import { useMemo } from 'react';
import type { InstrumentId } from '../../piano/ids.ts';
import type { BridgeTrial, TorqueReading } from '../../piano/stringingRecords.ts';
import type { Records } from '../../records/records.ts';
import type { FullRecords } from '../../report/fullRecords.ts';
import { judgeRecords } from '../../report/judgedRecords.ts';
import type { ReportRecords } from '../../report/reportRecords.ts';
import { recordedTakes } from '../../survey/recordedTakes.ts';
import { type Observed, useObserved } from '../../ui/useObserved.ts';

type Kept = ReportRecords & { readonly torques: readonly TorqueReading[]; readonly trials: readonly BridgeTrial[] };

/** Null: there is no such instrument. */
export function useLongRecord(records: Records, instrumentId: InstrumentId): Observed<FullRecords | null> {
  const kept = useObserved<Kept | null>(`long record ${instrumentId}`, (onValue, onFault) =>
    records.observe(() => readKept(records, instrumentId), onValue, onFault),
  );
  return useMemo(() => {
    if (kept.state !== 'ready' || !kept.value) return kept as Observed<null>;
    const { torques, trials, ...rest } = kept.value;
    return { state: 'ready', value: { ...judgeRecords(rest), torques, trials } };
  }, [kept]);
}

async function readKept(records: Records, instrumentId: InstrumentId): Promise<Kept | null> {
  const instrument = await records.instrument(instrumentId);
  if (!instrument) return null;
  const [visits, surveys, events, decisions, torques, trials] = await Promise.all([
    records.visitsOf(instrumentId),
    records.surveysOfInstrument(instrumentId),
    records.eventsOf(instrumentId),
    records.decisionsOf(instrumentId),
    records.torquesOf(instrumentId),
    records.trialsOf(instrumentId),
  ]);
  const takes = await Promise.all(surveys.map((survey) => records.takesOfSurvey(survey.id)));
  const kept = takes.flatMap((ofSurvey) => recordedTakes(ofSurvey).kept);
  return { instrument, visits, surveys, events, decisions, torques, trials, takes: kept };
}
