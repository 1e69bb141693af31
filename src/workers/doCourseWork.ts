/** The course worker's work, apart from the messages. */
import { courseSince } from '../stability/acrossInstruments/courseSince.ts';
import { JUDGEMENT_SEED } from '../stability/judgementSeed.ts';
import type { CourseQuestion, CourseReport } from './courseMessages.ts';

/** Reports each visit as it is judged; what goes wrong is a report, too. */
export function doCourseWork({ number, request }: CourseQuestion, report: (found: CourseReport) => void): void {
  try {
    const onVisit = (doneCount: number, allCount: number) => report({ kind: 'visit', number, doneCount, allCount });
    report({ kind: 'course', number, course: courseSince(request, JUDGEMENT_SEED, onVisit) });
  } catch (error) {
    report({ kind: 'failed', number, detail: error instanceof Error ? error.message : String(error) });
  }
}
