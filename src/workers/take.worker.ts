/** Does one piece of work on one take after the other, for the page and for whoever holds the other end of a port. */
import { doTakeWork } from './doTakeWork.ts';
import { parseTakeRequest } from './parseTakeWork.ts';
import type { TakeAnswer, TakeRequest } from './takeWork.ts';
import type { WorkerScope } from './workerScope.ts';

const scope = globalThis as unknown as WorkerScope<TakeAnswer>;

scope.onmessage = (event) => {
  const request = parseTakeRequest(event.data);
  if (request.kind === 'serve') serve(request.port);
  else void answer(request, scope.postMessage);
};

function serve(port: MessagePort): void {
  port.onmessage = (event: MessageEvent<unknown>) => {
    const request = parseTakeRequest(event.data);
    if (request.kind === 'work') void answer(request, (reply, transfer = []) => port.postMessage(reply, transfer));
  };
}

type Post = (answer: TakeAnswer, transfer?: Transferable[]) => void;

async function answer({ number, work }: Extract<TakeRequest, { kind: 'work' }>, post: Post): Promise<void> {
  try {
    const result = await doTakeWork(work);
    const buffer = result instanceof Uint8Array ? result.buffer : 'samples' in result ? result.samples.buffer : null;
    post({ kind: 'done', number, result }, buffer ? [buffer] : []);
  } catch (error) {
    post({ kind: 'failed', number, detail: error instanceof Error ? error.message : String(error) });
  }
}
