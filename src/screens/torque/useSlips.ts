import { useEffect, useState } from 'react';
import type { Instrument } from '../../piano/instrument.ts';
import type { Records } from '../../records/records.ts';
import type { JudgedPin } from '../../stability/drift/judgedPin.ts';
import { judgedDrift } from '../../workers/judgedDrift.ts';
import { readHistoryToJudge } from '../../workers/readHistoryToJudge.ts';

export type Slips =
  | { readonly state: 'judging'; readonly cancel: () => void }
  | { readonly state: 'judged'; readonly pins: readonly JudgedPin[] }
  | { readonly state: 'cancelled'; readonly again: () => void }
  | { readonly state: 'failed'; readonly detail: string; readonly again: () => void };

type Answer = { readonly pins: readonly JudgedPin[] } | { readonly detail: string } | 'cancelled';

/** How fast each string goes flat by itself, judged off the page's own thread from all years of readings. */
export function useSlips(records: Records, instrument: Instrument): Slips {
  const [answer, setAnswer] = useState<Answer | null>(null);
  const [attempt, setAttempt] = useState(0);
  const [cancel, setCancel] = useState<() => void>(() => () => undefined);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another attempt asks the same again
  useEffect(() => {
    const work = startJudging(records, instrument);
    let isGone = false;
    setCancel(() => work.cancel);
    work.answer.then((found) => {
      if (!isGone) setAnswer(found);
    });
    return () => {
      isGone = true;
      work.cancel();
    };
  }, [records, instrument.id, instrument.slipThresholdCentsPerYear, attempt]);
  const again = () => {
    setAnswer(null);
    setAttempt((count) => count + 1);
  };
  if (answer === null) return { state: 'judging', cancel };
  if (answer === 'cancelled') return { state: 'cancelled', again };
  if ('detail' in answer) return { state: 'failed', detail: answer.detail, again };
  return { state: 'judged', pins: answer.pins };
}

function startJudging(records: Records, instrument: Instrument) {
  let isCancelled = false;
  let cancelRunning: () => void = () => undefined;
  const judge = async (): Promise<Answer> => {
    const history = await readHistoryToJudge(records, instrument);
    if (isCancelled) return 'cancelled';
    const running = judgedDrift(instrument.id, history);
    cancelRunning = running.cancel;
    const drift = await running.drift;
    return drift ? { pins: drift.pins } : 'cancelled';
  };
  const answer = judge().catch((error: unknown) => ({
    detail: error instanceof Error ? error.message : String(error),
  }));
  const cancel = () => {
    isCancelled = true;
    cancelRunning();
  };
  return { answer, cancel };
}
