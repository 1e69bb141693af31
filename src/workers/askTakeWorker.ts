/** Asking a take worker, from the page or through a port from another worker. */
import { parseTakeAnswer } from './parseTakeWork.ts';
import type { TakeRequest, TakeResult, TakeWork } from './takeWork.ts';

export type TakeAsker = {
  /** Rejects with what the worker said where the work failed. */
  readonly ask: <Work extends TakeWork>(work: Work, transfer?: Transferable[]) => Promise<TakeResult<Work>>;
  /** Whoever waits is told; later questions are refused. */
  readonly giveUp: (reason: string) => void;
};

/** Where requests go and answers come from: a worker, or a port to one. */
type FarEnd = {
  postMessage: (message: TakeRequest, transfer: Transferable[]) => void;
  onmessage: ((event: MessageEvent<unknown>) => void) | null;
};

type Waiting = { readonly resolve: (result: unknown) => void; readonly reject: (reason: Error) => void };

export function createTakeAsker(farEnd: FarEnd): TakeAsker {
  const waiting = new Map<number, Waiting>();
  let number = 0;
  let givenUp: string | undefined;
  farEnd.onmessage = (event) => {
    const answer = parseTakeAnswer(event.data);
    const asked = waiting.get(answer.number);
    waiting.delete(answer.number);
    if (answer.kind === 'done') asked?.resolve(answer.result);
    else asked?.reject(new Error(answer.detail));
  };
  return {
    ask: <Work extends TakeWork>(work: Work, transfer: Transferable[] = []) =>
      new Promise<TakeResult<Work>>((resolve, reject) => {
        if (givenUp !== undefined) return reject(new Error(givenUp));
        number += 1;
        waiting.set(number, { resolve: (result) => resolve(result as TakeResult<Work>), reject });
        farEnd.postMessage({ kind: 'work', number, work }, transfer);
      }),
    giveUp: (reason) => {
      givenUp = reason;
      for (const { reject } of waiting.values()) reject(new Error(reason));
      waiting.clear();
    },
  };
}

export type TakeWorker = TakeAsker & {
  /** Lets another worker ask too, through the port's other end. */
  readonly serve: (port: MessagePort) => void;
  readonly close: () => void;
};

/** @param onBroken the worker itself failed, or could not be loaded */
export function openTakeWorker(onBroken: (detail: string) => void = () => undefined): TakeWorker {
  const worker = new Worker(new URL('./take.worker.ts', import.meta.url), { type: 'module' });
  const asker = createTakeAsker(worker);
  worker.onerror = (event) => {
    const detail = event.message || 'a worker of this page could not be loaded';
    asker.giveUp(detail);
    onBroken(detail);
  };
  const request = (message: TakeRequest, transfer: Transferable[]) => worker.postMessage(message, transfer);
  return {
    ...asker,
    serve: (port) => request({ kind: 'serve', port }, [port]),
    close: () => {
      asker.giveUp('the work was broken off');
      worker.terminate();
    },
  };
}
