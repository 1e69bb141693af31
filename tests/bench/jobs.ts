/** The kinds of work that the bench's threads do. */
import { driftJob } from './driftJob.ts';
import { pitchfinderJob } from './pitchfinderPeers.ts';
import { sceneJob } from './sceneJob.ts';
import { storedNoteJob } from './storedNotes.ts';
import { takeJob } from './takeJob.ts';
import { trialJob } from './trialJob.ts';
import { wireJob } from './wireJob.ts';

const JOBS = {
  take: takeJob,
  pitchfinder: pitchfinderJob,
  scene: sceneJob,
  'stored note': storedNoteJob,
  drift: driftJob,
  trial: trialJob,
  wire: wireJob,
};

export type JobKind = keyof typeof JOBS;
export type JobInput<Kind extends JobKind> = Parameters<(typeof JOBS)[Kind]>[0];
export type JobOutput<Kind extends JobKind> = Awaited<ReturnType<(typeof JOBS)[Kind]>>;

export async function runJob<Kind extends JobKind>(kind: Kind, input: JobInput<Kind>): Promise<unknown> {
  const job = JOBS[kind] as (given: JobInput<Kind>) => unknown; // the table pairs kinds with their own inputs
  return job(input);
}
