import { useMemo } from 'react';
import { readReportRecords } from '../../judging/readReportRecords.ts';
import { useJudgedRecords } from '../../judging/useJudgedRecords.ts';
import type { Judgement } from '../../judging/useJudgement.ts';
import type { InstrumentId } from '../../piano/ids.ts';
import type { BridgeTrial, TorqueReading } from '../../piano/stringingRecords.ts';
import type { Records } from '../../records/records.ts';
import type { FullRecords } from '../../report/fullRecords.ts';
import type { ReportRecords } from '../../report/reportRecords.ts';
import { type Observed, useObserved } from '../../ui/useObserved.ts';

type Kept = {
  readonly records: ReportRecords;
  readonly torques: readonly TorqueReading[];
  readonly trials: readonly BridgeTrial[];
};

export type LongRecordView = {
  /** Null: there is no such instrument. */
  readonly kept: Observed<Kept | null>;
  readonly judgement: Judgement;
  readonly readingCount: number;
  /** Null until the records are judged. */
  readonly record: FullRecords | null;
};

export function useLongRecord(records: Records, instrumentId: InstrumentId): LongRecordView {
  const kept = useObserved<Kept | null>(`long record ${instrumentId}`, (onValue, onFault) =>
    records.observe(() => readKept(records, instrumentId), onValue, onFault),
  );
  const found = kept.state === 'ready' ? kept.value : null;
  const { judgement, readingCount, judged } = useJudgedRecords(instrumentId, found?.records ?? null);
  const record = useMemo(
    () => found && judged && { ...judged, torques: found.torques, trials: found.trials },
    [found, judged],
  );
  return { kept, judgement, readingCount, record };
}

async function readKept(records: Records, instrumentId: InstrumentId): Promise<Kept | null> {
  const found = await readReportRecords(records, instrumentId);
  if (!found) return null;
  const [torques, trials] = await Promise.all([records.torquesOf(instrumentId), records.trialsOf(instrumentId)]);
  return { records: found, torques, trials };
}
