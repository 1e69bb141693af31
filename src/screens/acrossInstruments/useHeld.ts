import { useEffect, useReducer, useRef, useState } from 'react';
import type { Records } from '../../records/records.ts';
import { openCourses } from '../../workers/openCourses.ts';
import { type CourseCache, createCourseCache } from './courseCache.ts';
import { type HeldState, NOTHING_YET, withNews } from './heldState.ts';
import { type LookBackNews, lookBack } from './lookBack.ts';

export type Held = HeldState & { readonly stop: () => void; readonly goOn: () => void };

type News = LookBackNews | { readonly kind: 'stopped' } | { readonly kind: 'again' };

/** Looks back over all instruments, off the page's own thread; what was found before is there at once. */
export function useHeld(records: Records): Held {
  const [state, tell] = useReducer(
    (before: HeldState, news: News) => (news.kind === 'again' ? NOTHING_YET : withNews(before, news)),
    NOTHING_YET,
  );
  const [attempt, setAttempt] = useState(0);
  const stopRunning = useRef<() => void>(() => undefined);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another attempt asks the same again
  useEffect(() => {
    tell({ kind: 'again' });
    const courses = openCourses();
    let isStopped = false;
    const end = () => {
      isStopped = true;
      courses.close();
    };
    stopRunning.current = end;
    const tools = { records, courses, cache: courseCache(), isStopped: () => isStopped };
    lookBack(tools, tell)
      .catch((error: unknown) => tell({ kind: 'failed', name: '', detail: String(error) }))
      .finally(courses.close);
    return end;
  }, [records, attempt]);
  const stop = () => {
    stopRunning.current();
    tell({ kind: 'stopped' });
  };
  return { ...state, stop, goOn: () => setAttempt((count) => count + 1) };
}

let shared: CourseCache | undefined;

/** One for the page: what is found on one visit to this screen is there on the next, whatever the browser keeps. */
function courseCache(): CourseCache {
  shared ??= createCourseCache(storageOrNull());
  return shared;
}

/** Private windows may refuse even the question. */
function storageOrNull(): Storage | null {
  try {
    return window.localStorage;
  } catch {
    return null;
  }
}
