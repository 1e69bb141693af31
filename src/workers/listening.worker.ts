/** Cuts the sound into takes as it comes; the measuring worker measures them, so that no block ever waits for it. */
import { createHearing, type Hearing } from './hearing.ts';
import type { ListeningReport, ListeningRequest, MeasuringRequest } from './listeningMessages.ts';
import { parseBlockMessage, parseListeningRequest } from './parseMessage.ts';
import type { WorkerScope } from './workerScope.ts';

const scope = globalThis as unknown as WorkerScope<ListeningReport>;

/** The audio thread answers a flush within milliseconds, or never, when the system has taken it away. */
const FLUSH_PATIENCE_MS = 1000;

type Ears = { readonly hearing: Hearing; readonly flushed: Promise<void>; readonly end: () => void };
let ears: Ears | undefined;

scope.onmessage = (event) => {
  const request = parseListeningRequest(event.data);
  if (request.kind === 'open') ears = open(request);
  else if (ears === undefined) throw new Error(`the worker was asked to ${request.kind} before it was given sound`);
  else answer(request, ears);
};

function answer(request: Exclude<ListeningRequest, { kind: 'open' }>, { hearing, flushed, end }: Ears): void {
  if (request.kind === 'settings') hearing.set(request.settings);
  else if (request.kind === 'hole') hearing.interrupt();
  else if (request.kind === 'pause') hearing.pause();
  else if (request.kind === 'resume') hearing.resume();
  else void Promise.race([flushed, patience()]).then(end);
}

function open(request: Extract<ListeningRequest, { kind: 'open' }>): Ears {
  const { blocks, measuring, sampleRateHz, settings } = request;
  const tell = (message: MeasuringRequest, transfer: Transferable[] = []) => measuring.postMessage(message, transfer);
  const hearing = createHearing(sampleRateHz, settings, {
    report: (report) => scope.postMessage(report),
    measure: (segment) => tell(segment, [segment.samples.buffer]),
    measureEarly: (sounding) => tell(sounding, [sounding.samples.buffer]),
    nowMs: () => performance.now(),
  });
  const flushed = new Promise<void>((resolve) => {
    blocks.onmessage = (event: MessageEvent<unknown>) => {
      const message = parseBlockMessage(event.data);
      if (message.kind === 'block') hearing.hear(message);
      else resolve();
    };
  });
  const end = () => {
    try {
      hearing.finish();
    } finally {
      tell({ kind: 'end' }); // whatever happened: the page waits for it
    }
  };
  return { hearing, flushed, end };
}

function patience(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, FLUSH_PATIENCE_MS));
}
