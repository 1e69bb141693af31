import { expect, it } from 'vitest';
import type { CourseRequest } from '../../src/stability/acrossInstruments/courseSince.ts';
import type { CourseQuestion } from '../../src/workers/courseMessages.ts';
import { doCourseWork } from '../../src/workers/doCourseWork.ts';
import { openCourses } from '../../src/workers/openCourses.ts';
import { parseCourseQuestion } from '../../src/workers/parseCourse.ts';

const REQUEST: CourseRequest = {
  history: {
    readings: [
      {
        visitedOn: '2020-01-01',
        stage: 'as-found',
        humidityPct: null,
        temperatureC: null,
        midi: 60,
        stringPosition: 2,
        cents: 0,
        standardUncertaintyCents: null,
      },
    ],
    events: [],
    instrument: { compass: null, bassBridgeTopMidi: null, strutsAfterMidi: [] },
  },
  job: { doneOn: '2019-01-01', range: null },
  untilOn: null,
  thresholdCentsPerYear: 1,
};

/** A worker in the same thread. */
function farEnd() {
  const end = {
    onmessage: null as ((event: MessageEvent<unknown>) => void) | null,
    onerror: null as ((event: ErrorEvent) => void) | null,
    isTerminated: false,
    terminate: () => {
      end.isTerminated = true;
    },
    postMessage: (question: CourseQuestion) => {
      queueMicrotask(() => {
        doCourseWork(parseCourseQuestion(structuredClone(question)), (data) =>
          end.onmessage?.({ data: structuredClone(data) } as MessageEvent<unknown>),
        );
      });
    },
  };
  return end;
}

it('asks for a course and is told each visit', async () => {
  const visits: number[][] = [];
  const desk = openCourses(farEnd());
  const course = await desk.courseOf(REQUEST, (doneCount, allCount) => visits.push([doneCount, allCount]));
  expect(course).toEqual([{ visitedOn: '2020-01-01', state: 'not enough evidence' }]);
  expect(visits).toEqual([[1, 1]]);
});

it('gives the right answer to each of two questions', async () => {
  const desk = openCourses(farEnd());
  const later = { ...REQUEST, job: { doneOn: '2021-01-01', range: null } };
  const [first, second] = await Promise.all([REQUEST, later].map((request) => desk.courseOf(request, () => undefined)));
  expect(first).toHaveLength(1);
  expect(second).toEqual([]);
});

it('breaks off what is being worked on when it is closed', async () => {
  const end = farEnd();
  const desk = openCourses({ ...end, postMessage: () => undefined, terminate: end.terminate });
  const course = desk.courseOf(REQUEST, () => undefined);
  desk.close();
  await expect(course).rejects.toThrow('broken off');
  expect(end.isTerminated).toBe(true);
});

it('refuses a question that does not fit', () => {
  expect(() => parseCourseQuestion({ number: 1, request: { ...REQUEST, untilOn: 'tomorrow' } })).toThrow(/request/);
});
