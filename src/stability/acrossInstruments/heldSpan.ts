/** For how long a job was watched, and whether it held all that time. */
import type { VerdictState } from '../drift/verdict.ts';
import type { StateOnDate } from './courseSince.ts';
import { type Job, yearsBetween } from './jobs.ts';
import type { Span } from './productLimit.ts';

/** From which verdict on something no longer counts as holding. */
export type Alarm = 'watch' | 'giving way';

export type HeldSpan = {
  readonly job: Job;
  readonly span: Span;
  /** When observation began, and when it ended or the verdict changed. */
  readonly fromOn: string;
  readonly toOn: string;
  /** What ended it; `holding` where nothing did. */
  readonly endState: Exclude<VerdictState, 'not enough evidence'>;
};

export type JudgedJob =
  | { readonly isJudged: true; readonly held: HeldSpan }
  /** No visit since the work, or too little from those to judge by. */
  | { readonly isJudged: false; readonly job: Job; readonly visitCount: number };

/**
 * Observation begins at the visit before the first verdict: until then nothing could have been found, so those years prove nothing.
 * It ends at the first visit whose verdict is the alarm or worse, or else at the last one that had a verdict.
 */
export function heldSpan(job: Job, course: readonly StateOnDate[], alarm: Alarm): JudgedJob {
  const isKnown = ({ state }: StateOnDate) => state !== 'not enough evidence';
  const first = course.findIndex(isKnown);
  const last = course.findLast(isKnown);
  const fromOn = course[first - 1]?.visitedOn;
  if (!last || fromOn === undefined) return { isJudged: false, job, visitCount: course.length };
  const end = course.find(({ state }) => state === 'giving way' || (alarm === 'watch' && state === 'watch'));
  const toOn = (end ?? last).visitedOn;
  const span = {
    entryYears: yearsBetween(job.doneOn, fromOn),
    exitYears: yearsBetween(job.doneOn, toOn),
    hasEnded: end !== undefined,
  };
  const endState = end?.state === 'watch' || end?.state === 'giving way' ? end.state : 'holding';
  return { isJudged: true, held: { job, span, fromOn, toOn, endState } };
}
