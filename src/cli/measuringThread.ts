/** The other end of the thread pool: answers one request after another. */
import { parentPort } from 'node:worker_threads';
import { type MeasureOptions, measureTake } from '../analysis/tone/measureTake.ts';
import type { TakeOutcome } from '../piano/reading.ts';
import { type MeasuredFile, type MeasureJob, measureFile } from './measureFile.ts';

export type FileRequest = { readonly kind: 'file'; readonly job: MeasureJob };
export type TakeRequest = {
  readonly kind: 'take';
  readonly samples: Float32Array;
  readonly sampleRateHz: number;
  readonly options: MeasureOptions;
};
export type ThreadRequest = FileRequest | TakeRequest;
export type ThreadAnswer<Request extends ThreadRequest> = Request extends FileRequest ? MeasuredFile : TakeOutcome;

/** What goes wrong is not caught: it ends the thread, and the pool hears of it. */
export function answerRequests(): void {
  console.error = () => undefined; // as in processTerminal.ts
  parentPort?.on('message', async (request: ThreadRequest) => parentPort?.postMessage(await answer(request)));
}

function answer(request: ThreadRequest): Promise<MeasuredFile> | TakeOutcome {
  if (request.kind === 'file') return measureFile(request.job);
  return measureTake(request.samples, request.sampleRateHz, request.options);
}
