import { startTransition, useEffect, useState } from 'react';
import type { InstrumentId } from '../piano/ids.ts';
import type { Drift } from '../stability/drift/analyseDrift.ts';
import type { HistoryToJudge } from '../workers/driftMessages.ts';
import { judgedDrift, knownDrift } from '../workers/judgedDrift.ts';

export type Judgement =
  /** `before` is the last judgement of other records or another threshold, to be looked at meanwhile. */
  | { readonly state: 'judging'; readonly before: Drift | null; readonly cancel: () => void }
  | { readonly state: 'judged'; readonly drift: Drift }
  | { readonly state: 'cancelled'; readonly again: () => void }
  | { readonly state: 'failed'; readonly detail: string; readonly again: () => void };

type Outcome = { readonly drift: Drift } | { readonly cancelled: true } | { readonly detail: string };

/**
 * The judgement of an instrument's history, off the page's own thread.
 * @param asked the same object until something changes, for another one starts another judgement; null until it is known
 */
export function useJudgement(instrumentId: InstrumentId, asked: HistoryToJudge | null): Judgement {
  const [answer, setAnswer] = useState<{ asked: HistoryToJudge; outcome: Outcome } | null>(null);
  const [attempt, setAttempt] = useState(0);
  const [running, setRunning] = useState<() => void>(() => () => undefined);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another attempt asks the same again
  useEffect(() => {
    if (!asked) return;
    const known = knownDrift(instrumentId, asked);
    if (known) return setAnswer({ asked, outcome: { drift: known } });
    const judging = judgedDrift(instrumentId, asked);
    setRunning(() => judging.cancel);
    judging.drift.then(
      (drift) => startTransition(() => setAnswer({ asked, outcome: drift ? { drift } : { cancelled: true } })),
      (error: unknown) => setAnswer({ asked, outcome: { detail: messageOf(error) } }),
    );
    return judging.cancel;
  }, [instrumentId, asked, attempt]);
  const before = answer && 'drift' in answer.outcome ? answer.outcome.drift : null;
  if (!answer || answer.asked !== asked) return { state: 'judging', before, cancel: running };
  if ('drift' in answer.outcome) return { state: 'judged', drift: answer.outcome.drift };
  const again = () => {
    setAnswer(null);
    setAttempt((count) => count + 1);
  };
  if ('detail' in answer.outcome) return { state: 'failed', detail: answer.outcome.detail, again };
  return { state: 'cancelled', again };
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
