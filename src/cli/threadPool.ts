/** A few threads that measure, so that every core of the machine works. */
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import type { ThreadAnswer, ThreadRequest } from './measuringThread.ts';

export type ThreadPool = {
  readonly threadCount: number;
  /** Waits for a free thread. Rejects where the thread fails. */
  ask<Request extends ThreadRequest>(request: Request): Promise<ThreadAnswer<Request>>;
  close(): Promise<void>;
};

/** Each thread holds the take it works on; more than a few would not be faster. */
const MOST_THREADS = 8;

/** @param taskCount no more threads than this are worth starting. */
export function createThreadPool(taskCount: number): ThreadPool {
  const threadCount = Math.max(1, Math.min(availableParallelism(), taskCount, MOST_THREADS));
  const threads = Array.from({ length: threadCount }, () => new Worker(fileURLToPath(import.meta.url)));
  const free = [...threads];
  const waiting: ((thread: Worker) => void)[] = [];
  const release = (thread: Worker) => {
    const next = waiting.shift();
    if (next) next(thread);
    else free.push(thread);
  };
  return {
    threadCount,
    async ask(request) {
      const thread = free.pop() ?? (await new Promise<Worker>((resolve) => waiting.push(resolve)));
      const answer = await answerOf(thread, request);
      release(thread);
      return answer;
    },
    async close() {
      await Promise.all(threads.map((thread) => thread.terminate()));
    },
  };
}

/** A thread that fails is not released: whoever waits for it is told by the rejection of the work as a whole. */
function answerOf<Request extends ThreadRequest>(thread: Worker, request: Request): Promise<ThreadAnswer<Request>> {
  return new Promise((resolve, reject) => {
    const settle = (act: () => void) => {
      thread.off('message', onMessage).off('error', onError);
      act();
    };
    const onMessage = (answer: ThreadAnswer<Request>) => settle(() => resolve(answer));
    const onError = (error: Error) => settle(() => reject(error));
    thread.on('message', onMessage).on('error', onError);
    thread.postMessage(request);
  });
}
