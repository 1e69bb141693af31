/** Asking the drift worker, from the page. Each question has a worker of its own, which ends with it: to cancel is to end it. */
import type { DriftReport, DriftWork } from './driftMessages.ts';
import { parseDriftReport } from './parseDrift.ts';

export type RunningDrift = {
  /** Resolves when the work has ended or was broken off; rejects with what the worker said where it failed. */
  readonly ended: Promise<'finished' | 'cancelled'>;
  readonly cancel: () => void;
};

type FarEnd = Pick<Worker, 'postMessage' | 'terminate'> & {
  onmessage: ((event: MessageEvent<unknown>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
};

/** @param onReport what is found, as it is found; nothing after a cancel */
export function openDrift(
  work: DriftWork,
  onReport: (report: Exclude<DriftReport, { kind: 'finished' | 'failed' }>) => void,
  worker: FarEnd = new Worker(new URL('./drift.worker.ts', import.meta.url), { type: 'module' }),
): RunningDrift {
  let cancel: () => void = () => undefined;
  const ended = new Promise<'finished' | 'cancelled'>((resolve, reject) => {
    const end = () => {
      worker.onmessage = null;
      worker.onerror = null;
      worker.terminate();
    };
    cancel = () => {
      end();
      resolve('cancelled');
    };
    worker.onerror = (event) => {
      end();
      reject(new Error(event.message || 'a worker of this page could not be loaded'));
    };
    worker.onmessage = (event) => {
      const report = parseDriftReport(event.data);
      if (report.kind !== 'finished' && report.kind !== 'failed') return onReport(report);
      end();
      if (report.kind === 'finished') resolve('finished');
      else reject(new Error(report.detail));
    };
    worker.postMessage(work);
  });
  return { ended, cancel: () => cancel() };
}
