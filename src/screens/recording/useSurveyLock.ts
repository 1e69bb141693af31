import { useEffect, useState } from 'react';
import type { SurveyId } from '../../piano/ids.ts';
import { browserLocks, surveyLockName } from '../../ui/surveyLock.ts';

/** `waiting`: another page of this browser records into the survey. */
export type SurveyLock = 'asking' | 'held' | 'waiting';

/**
 * One page at a time records into a survey. Who comes second waits, and goes on once the first one has left.
 * Where the browser has no locks, nothing is watched.
 */
export function useSurveyLock(surveyId: SurveyId): SurveyLock {
  const [lock, setLock] = useState<SurveyLock>('asking');
  useEffect(() => {
    const locks = browserLocks();
    if (!locks) return setLock('held');
    const leaving = new AbortController();
    const left = new Promise<void>((resolve) => leaving.signal.addEventListener('abort', () => resolve()));
    const waiting = setTimeout(() => setLock('waiting'), 200);
    locks
      .request(surveyLockName(surveyId), { signal: leaving.signal }, () => {
        clearTimeout(waiting);
        setLock('held');
        return left;
      })
      .catch((fault: unknown) => {
        if (!leaving.signal.aborted) console.error(fault);
      });
    return () => {
      clearTimeout(waiting);
      leaving.abort();
    };
  }, [surveyId]);
  return lock;
}
