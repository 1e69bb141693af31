import { useEffect, useState } from 'react';
import type { Instrument } from '../../piano/instrument.ts';
import type { Verdict } from '../../stability/drift/verdict.ts';
import type { InstrumentHistory } from '../../stability/historyOfRecords.ts';
import { whenIdle } from '../../ui/whenIdle.ts';
import { judgedDrift } from '../../workers/judgedDrift.ts';
import { historyToJudge } from '../../workers/readHistoryToJudge.ts';

/** The verdict of these records, judged off the page's thread once the page itself has nothing more to do. Null until then. */
export function useIdleVerdict(
  { id, slipThresholdCentsPerYear }: Pick<Instrument, 'id' | 'slipThresholdCentsPerYear'>,
  history: InstrumentHistory | null,
): Verdict | null {
  const [judged, setJudged] = useState<{ history: InstrumentHistory; verdict: Verdict } | null>(null);
  useEffect(() => {
    if (!history || history.readings.length === 0) return;
    let cancel: () => void = () => undefined;
    const stopWaiting = whenIdle(() => {
      const judging = judgedDrift(id, historyToJudge(history, { slipThresholdCentsPerYear }));
      cancel = judging.cancel;
      judging.drift.then(
        (drift) => drift && setJudged({ history, verdict: drift.verdict }),
        (error: unknown) => console.info('The verdict is not shown here; the stability page says why.', error),
      );
    });
    return () => {
      stopWaiting();
      cancel();
    };
  }, [id, slipThresholdCentsPerYear, history]);
  return judged?.history === history ? judged.verdict : null;
}
