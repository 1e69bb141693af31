/** For how long a job was watched, and whether it held all that time. */
import { yearsBetween } from '../changeIntervals.ts';
import type { VerdictState } from '../drift/verdict.ts';
import type { StateOnDate } from './courseSince.ts';
import type { Job } from './jobs.ts';
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
  /** When an alarm was raised that the last verdict took back. */
  readonly takenBackOn: string | null;
};

export type JudgedJob =
  | { readonly isJudged: true; readonly held: HeldSpan }
  /** No visit since the work, or too little from those to judge by. */
  | { readonly isJudged: false; readonly job: Job; readonly visitCount: number };

/**
 * Observation begins at the visit before the first verdict: until then nothing could have been found, so those years prove nothing.
 * It ends at the first visit whose verdict is the alarm or worse, or else at the last one that had a verdict. A verdict at every visit
 * raises a false alarm sooner or later; so an alarm that the last verdict, which knows more, takes back does not count, unless work
 * was done in between that may have mended what it meant.
 * @param laterWorkOn dates of all work on the instrument after the job
 */
export function heldSpan(
  job: Job,
  course: readonly StateOnDate[],
  alarm: Alarm,
  laterWorkOn: readonly string[] = [],
): JudgedJob {
  const isKnown = ({ state }: StateOnDate) => state !== 'not enough evidence';
  const isAlarm = ({ state }: StateOnDate) => state === 'giving way' || (alarm === 'watch' && state === 'watch');
  const first = course.findIndex(isKnown);
  const last = course.findLast(isKnown);
  const fromOn = course[first - 1]?.visitedOn;
  if (!last || fromOn === undefined) return { isJudged: false, job, visitCount: course.length };
  const raised = course.find(isAlarm);
  const isMended = raised !== undefined && laterWorkOn.some((date) => date > raised.visitedOn);
  const end = raised && (isMended || isAlarm(last)) ? raised : undefined;
  const toOn = (end ?? last).visitedOn;
  const span = {
    entryYears: yearsBetween(job.doneOn, fromOn),
    exitYears: yearsBetween(job.doneOn, toOn),
    hasEnded: end !== undefined,
  };
  const endState = end?.state === 'watch' || end?.state === 'giving way' ? end.state : 'holding';
  const takenBackOn = raised && !end ? raised.visitedOn : null;
  return { isJudged: true, held: { job, span, fromOn, toOn, endState, takenBackOn } };
}
