import { useMemo } from 'react';
import type { InstrumentId } from '../piano/ids.ts';
import { type JudgedRecords, withDrift } from '../report/judgedRecords.ts';
import type { ReportRecords } from '../report/reportRecords.ts';
import { historyOfRecords } from '../stability/historyOfRecords.ts';
import { historyToJudge } from '../workers/readHistoryToJudge.ts';
import { type Judgement, useJudgement } from './useJudgement.ts';

export type JudgedView = {
  readonly judgement: Judgement;
  readonly readingCount: number;
  /** Null until these very records are judged. */
  readonly judged: JudgedRecords | null;
};

/** @param records the same object until something changes; null until they are read */
export function useJudgedRecords(instrumentId: InstrumentId, records: ReportRecords | null): JudgedView {
  const history = useMemo(() => records && historyOfRecords(records), [records]);
  const asked = useMemo(() => records && history && historyToJudge(history, records.instrument), [records, history]);
  const judgement = useJudgement(instrumentId, asked);
  const drift = judgement.state === 'judged' ? judgement.drift : null;
  const judged = useMemo(
    () => records && history && drift && withDrift(records, history, drift),
    [records, history, drift],
  );
  return { judgement, readingCount: history?.readings.length ?? 0, judged };
}
