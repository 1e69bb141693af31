/** The bench's threads: each makes its sounds itself, so that only descriptions and readings travel. */
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { parentPort, Worker } from 'node:worker_threads';
import { type JobInput, type JobKind, type JobOutput, runJob } from './jobs.ts';

export type BenchPool = {
  /** All inputs through one kind of job; outputs in the order of the inputs. Rejects if one fails. */
  run<Kind extends JobKind>(kind: Kind, inputs: readonly JobInput<Kind>[]): Promise<JobOutput<Kind>[]>;
  close(): Promise<void>;
};

type Request = { readonly kind: JobKind; readonly index: number; readonly input: unknown };
type Answer = { readonly index: number; readonly output: unknown };

/** Starts this very bundle again in threads, which call `answerJobs`. */
export function createBenchPool(onProgress: (line: string) => void): BenchPool {
  const threads = Array.from({ length: availableParallelism() }, () => new Worker(fileURLToPath(import.meta.url)));
  return {
    async run<Kind extends JobKind>(kind: Kind, inputs: readonly JobInput<Kind>[]) {
      const outputs: unknown[] = [];
      let next = 0;
      let doneCount = 0;
      const work = async (thread: Worker) => {
        for (let index = next++; index < inputs.length; index = next++) {
          outputs[index] = (await ask(thread, { kind, index, input: inputs[index] })).output;
          doneCount += 1;
          onProgress(`${kind} ${doneCount} of ${inputs.length}`);
        }
      };
      await Promise.all(threads.map(work));
      return outputs as JobOutput<Kind>[]; // each output is what runJob gave for its input
    },
    async close() {
      await Promise.all(threads.map((thread) => thread.terminate()));
    },
  };
}

function ask(thread: Worker, request: Request): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const settle = (act: () => void) => {
      thread.off('message', onMessage).off('error', onError);
      act();
    };
    const onMessage = (answer: Answer) => settle(() => resolve(answer));
    const onError = (error: Error) => settle(() => reject(error));
    thread.on('message', onMessage).on('error', onError);
    thread.postMessage(request);
  });
}

/** The other end, in the thread. */
export function answerJobs(): void {
  parentPort?.on('message', async ({ kind, index, input }: Request) => {
    parentPort?.postMessage({ index, output: await runJob(kind, input as JobInput<JobKind>) });
  });
}
