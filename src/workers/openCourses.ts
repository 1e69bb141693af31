/** Asking the course worker, from the page. One worker answers all questions in turn; to cancel is to end it. */
import type { CourseRequest, StateOnDate } from '../stability/acrossInstruments/courseSince.ts';
import type { CourseQuestion } from './courseMessages.ts';
import { parseCourseReport } from './parseCourse.ts';

export type CourseDesk = {
  /** Rejects with what the worker said where it failed, and when the desk is closed. */
  readonly courseOf: (
    request: CourseRequest,
    onVisit: (doneCount: number, allCount: number) => void,
  ) => Promise<readonly StateOnDate[]>;
  readonly close: () => void;
};

type FarEnd = Pick<Worker, 'terminate'> & {
  postMessage: (question: CourseQuestion) => void;
  onmessage: ((event: MessageEvent<unknown>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
};

type Waiting = {
  readonly onVisit: (doneCount: number, allCount: number) => void;
  readonly resolve: (course: readonly StateOnDate[]) => void;
  readonly reject: (reason: Error) => void;
};

export function openCourses(
  worker: FarEnd = new Worker(new URL('./course.worker.ts', import.meta.url), { type: 'module' }),
): CourseDesk {
  const waiting = new Map<number, Waiting>();
  let number = 0;
  const end = (reason: string) => {
    worker.onmessage = null;
    worker.terminate();
    for (const { reject } of waiting.values()) reject(new Error(reason));
    waiting.clear();
  };
  worker.onerror = (event) => end(event.message || 'a worker of this page could not be loaded');
  worker.onmessage = (event) => {
    const report = parseCourseReport(event.data);
    const asked = waiting.get(report.number);
    if (report.kind === 'visit') return asked?.onVisit(report.doneCount, report.allCount);
    waiting.delete(report.number);
    if (report.kind === 'course') asked?.resolve(report.course);
    else asked?.reject(new Error(report.detail));
  };
  return {
    courseOf: (request, onVisit) =>
      new Promise((resolve, reject) => {
        number += 1;
        waiting.set(number, { onVisit, resolve, reject });
        worker.postMessage({ number, request });
      }),
    close: () => end('the work was broken off'),
  };
}
