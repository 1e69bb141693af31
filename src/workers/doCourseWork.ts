/** The course worker's work, apart from the messages. */
import { courseSince } from '../stability/acrossInstruments/courseSince.ts';
import type { CourseQuestion, CourseReport } from './courseMessages.ts';

/** The drift worker's and the command line's, so that all say the same of the same history. */
const SEED = 20_260_101;

/** Reports each visit as it is judged; what goes wrong is a report, too. */
export function doCourseWork({ number, request }: CourseQuestion, report: (found: CourseReport) => void): void {
  try {
    const onVisit = (doneCount: number, allCount: number) => report({ kind: 'visit', number, doneCount, allCount });
    report({ kind: 'course', number, course: courseSince(request, SEED, onVisit) });
  } catch (error) {
    report({ kind: 'failed', number, detail: error instanceof Error ? error.message : String(error) });
  }
}
