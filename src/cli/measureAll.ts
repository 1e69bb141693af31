/** Many recordings of one note each, measured on as many threads as the machine has cores. */
import { type MeasuredFile, type MeasureJob, measureFile } from './measureFile.ts';
import { createThreadPool } from './threadPool.ts';

/** In the order of the jobs. @param onDone is told how many are done. */
export async function measureAll(
  jobs: readonly MeasureJob[],
  onDone: (doneCount: number) => void,
): Promise<MeasuredFile[]> {
  const [only, ...others] = jobs;
  if (only && others.length === 0) return [await measureFile(only)];
  let doneCount = 0;
  const pool = createThreadPool(jobs.length);
  const measure = async (job: MeasureJob) => {
    const measured = await pool.ask({ kind: 'file', job });
    doneCount += 1;
    onDone(doneCount);
    return measured;
  };
  try {
    return await Promise.all(jobs.map(measure));
  } finally {
    await pool.close();
  }
}
