/** Looks back over instruments' visits, one question after the other, for the page. */
import type { CourseReport } from './courseMessages.ts';
import { doCourseWork } from './doCourseWork.ts';
import { parseCourseQuestion } from './parseCourse.ts';
import type { WorkerScope } from './workerScope.ts';

const scope = globalThis as unknown as WorkerScope<CourseReport>;

scope.onmessage = (event) => doCourseWork(parseCourseQuestion(event.data), (report) => scope.postMessage(report));
