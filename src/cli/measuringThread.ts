/** The other end of measureAll: a thread that answers one job after another. */
import { parentPort } from 'node:worker_threads';
import { type MeasuredFile, type MeasureJob, measureFile } from './measureFile.ts';

export function answerMeasureJobs(): void {
  console.error = () => undefined; // as in processTerminal.ts
  parentPort?.on('message', async (job: MeasureJob) => {
    parentPort?.postMessage((await measureFile(job)) satisfies MeasuredFile);
  });
}
