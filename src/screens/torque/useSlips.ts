import { type Judgement, useJudgement } from '../../judging/useJudgement.ts';
import type { Instrument } from '../../piano/instrument.ts';
import type { Records } from '../../records/records.ts';
import { type Observed, useObserved } from '../../ui/useObserved.ts';
import type { HistoryToJudge } from '../../workers/driftMessages.ts';
import { readHistoryToJudge } from '../../workers/readHistoryToJudge.ts';

/** How fast each string goes flat by itself, judged from all years of readings. */
export type Slips = { readonly history: Observed<HistoryToJudge>; readonly judgement: Judgement };

export function useSlips(records: Records, instrument: Instrument): Slips {
  const { id, slipThresholdCentsPerYear } = instrument;
  const history = useObserved<HistoryToJudge>(`slips ${id} ${slipThresholdCentsPerYear}`, (onValue, onFault) =>
    records.observe(() => readHistoryToJudge(records, instrument), onValue, onFault),
  );
  return { history, judgement: useJudgement(id, history.state === 'ready' ? history.value : null) };
}
