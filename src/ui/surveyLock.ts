/** The lock that a page holds while it records into a survey (W3C Web Locks). */
import type { SurveyId } from '../piano/ids.ts';

export function surveyLockName(surveyId: SurveyId): string {
  return `stillpin survey ${surveyId}`;
}

/** Undefined where the browser has none: then nothing is watched. */
export function browserLocks(): LockManager | undefined {
  return (navigator as { locks?: LockManager }).locks;
}

/** Whether any page of this browser records into the survey, or waits to. */
export async function isSurveyOpen(surveyId: SurveyId): Promise<boolean> {
  const { held = [], pending = [] } = (await browserLocks()?.query()) ?? {};
  return [...held, ...pending].some(({ name }) => name === surveyLockName(surveyId));
}
