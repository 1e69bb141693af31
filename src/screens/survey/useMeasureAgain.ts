import { useEffect, useRef, useState } from 'react';
import type { Take } from '../../piano/instrument.ts';
import type { Records } from '../../records/records.ts';
import { openTakeWorker, type TakeWorker } from '../../workers/askTakeWorker.ts';
import { type AgainSummary, measureSurveyAgain } from './measureSurveyAgain.ts';

/** Two, as many as the slowest machines have cores. */
const WORKER_COUNT = 2;

export type MeasureAgain = {
  readonly state:
    | { readonly phase: 'none' }
    | { readonly phase: 'running'; readonly triedCount: number; readonly allCount: number }
    | { readonly phase: 'done' | 'stopped'; readonly summary: AgainSummary };
  readonly run: (takes: readonly Take[]) => Promise<void>;
  readonly stop: () => void;
};

/** Measures a whole survey again, for as long as its screen is open. */
export function useMeasureAgain(records: Records): MeasureAgain {
  const [state, setState] = useState<MeasureAgain['state']>({ phase: 'none' });
  const workers = useRef<readonly TakeWorker[] | null>(null);
  const stop = () => {
    for (const worker of workers.current ?? []) worker.close();
    workers.current = null;
  };
  const run = async (takes: readonly Take[]) => {
    const own = Array.from({ length: Math.min(WORKER_COUNT, takes.length) }, () => openTakeWorker());
    workers.current = own;
    const allCount = takes.length;
    setState({ phase: 'running', triedCount: 0, allCount });
    const isStopped = () => workers.current !== own;
    const summary = await measureSurveyAgain(takes, {
      records,
      askers: own,
      onProgress: (triedCount) => setState({ phase: 'running', triedCount, allCount }),
      isStopped,
    });
    setState({ phase: isStopped() ? 'stopped' : 'done', summary });
    stop();
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: once, when the screen closes
  useEffect(() => () => stop(), []);
  return { state, run, stop };
}
