import { useEffect, useRef, useState } from 'react';
import { summariseTrials, type WhatIfQuestion, type WhatIfSummary, type WhatIfTrial } from '../../stability/whatIf.ts';
import { openDrift } from '../../workers/openDrift.ts';

/** Enough to tell half from nine in ten; more would try a telephone's patience. */
export const TRIAL_COUNT = 20;

export type WhatIf = {
  readonly isRunning: boolean;
  readonly doneCount: number;
  /** Of the trials that have ended. */
  readonly summary: WhatIfSummary | null;
  readonly fault: string | null;
  readonly start: (question: WhatIfQuestion) => void;
  readonly stop: () => void;
};

/** Invented pianos judged one after the other, off the page's own thread; what has been found so far is shown. */
export function useWhatIf(): WhatIf {
  const [trials, setTrials] = useState<readonly WhatIfTrial[]>([]);
  const [isRunning, setRunning] = useState(false);
  const [fault, setFault] = useState<string | null>(null);
  const cancel = useRef<() => void>(() => undefined);
  useEffect(() => () => cancel.current(), []);
  const start = (question: WhatIfQuestion) => {
    cancel.current();
    setTrials([]);
    setFault(null);
    setRunning(true);
    const seeds = Array.from({ length: TRIAL_COUNT }, (_, index) => index + 1);
    let isCurrent = true;
    const running = openDrift({ kind: 'what-if', question, seeds }, (report) => {
      if (report.kind === 'trial') setTrials((before) => [...before, report.trial]);
    });
    cancel.current = () => {
      isCurrent = false;
      running.cancel();
    };
    running.ended.then(
      () => isCurrent && setRunning(false),
      (error: unknown) => {
        setFault(error instanceof Error ? error.message : String(error));
        setRunning(false);
      },
    );
  };
  const stop = () => {
    cancel.current();
    setRunning(false);
  };
  return {
    isRunning,
    doneCount: trials.length,
    summary: trials.length === 0 ? null : summariseTrials(trials),
    fault,
    start,
    stop,
  };
}
