/** Many recordings, measured on as many threads as the machine has cores to spare. */
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import { type MeasuredFile, type MeasureJob, measureFile } from './measureFile.ts';

/** Each thread holds the decoded take it works on; more than a few would not be faster. */
const MOST_THREADS = 8;

/** In the order of the jobs. @param onDone is told how many are done. */
export async function measureAll(
  jobs: readonly MeasureJob[],
  onDone: (doneCount: number) => void,
): Promise<MeasuredFile[]> {
  const results: MeasuredFile[] = [];
  let nextIndex = 0;
  let doneCount = 0;
  const workThrough = async (measure: (job: MeasureJob) => Promise<MeasuredFile>) => {
    for (let index = nextIndex++; index < jobs.length; index = nextIndex++) {
      const job = jobs[index];
      if (job) results[index] = await measure(job);
      doneCount += 1;
      onDone(doneCount);
    }
  };
  const threadCount = Math.min(availableParallelism(), jobs.length, MOST_THREADS);
  if (threadCount < 2) await workThrough(measureFile);
  else await Promise.all(Array.from({ length: threadCount }, () => onThread(workThrough)));
  return results;
}

async function onThread(workThrough: (measure: (job: MeasureJob) => Promise<MeasuredFile>) => Promise<void>) {
  const worker = new Worker(fileURLToPath(import.meta.url));
  try {
    await workThrough((job) => askThread(worker, job));
  } finally {
    await worker.terminate();
  }
}

function askThread(worker: Worker, job: MeasureJob): Promise<MeasuredFile> {
  return new Promise((resolve, reject) => {
    const settle = (act: () => void) => {
      worker.off('message', onMessage).off('error', onError);
      act();
    };
    const onError = (error: Error) => settle(() => reject(error));
    const onMessage = (measured: MeasuredFile) => settle(() => resolve(measured));
    worker.on('message', onMessage).on('error', onError);
    worker.postMessage(job);
  });
}
