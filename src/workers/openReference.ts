/** The page's side of the worker that listens for a reference tone. Fits the sink that `startListening` asks for. */
import type { ReferenceOutcome } from '../analysis/tone/measureReference.ts';
import { parseReferenceReport, type ReferenceRequest } from './referenceMessages.ts';

export type ReferenceHandlers = {
  /** For how long the tone has been heard without a break. */
  readonly onHeard: (heardS: number) => void;
  readonly onOutcome: (outcome: ReferenceOutcome) => void;
  /** A fault of the program itself. */
  readonly onFailed: (detail: string) => void;
};

export type ReferenceDesk = {
  readonly open: (blocks: MessagePort, sampleRateHz: number) => void;
  readonly pause: () => void;
  readonly resume: () => void;
  readonly markHole: () => void;
  readonly finish: () => Promise<void>;
  readonly close: () => void;
};

export function openReference(expectedHz: number, handlers: ReferenceHandlers): ReferenceDesk {
  const worker = new Worker(new URL('./reference.worker.ts', import.meta.url), { type: 'module' });
  worker.onmessage = (event) => {
    const report = parseReferenceReport(event.data);
    if (report.kind === 'heard') handlers.onHeard(report.heardS);
    else handlers.onOutcome(report.outcome);
  };
  worker.onerror = (event) => handlers.onFailed(event.message || 'a worker of this page could not be loaded');
  const ask = (request: ReferenceRequest, transfer: Transferable[] = []) => worker.postMessage(request, transfer);
  const markHole = () => ask({ kind: 'hole' });
  return {
    open: (blocks, sampleRateHz) => ask({ kind: 'open', blocks, sampleRateHz, expectedHz }, [blocks]),
    pause: markHole,
    resume: markHole,
    markHole,
    finish: () => Promise.resolve(),
    close: () => worker.terminate(),
  };
}
