/** The gate for messages to and from the course worker. Histories are looked at in outline: the same program made them. */
import * as v from 'valibot';
import type { CourseRequest } from '../stability/acrossInstruments/courseSince.ts';
import { checkedMessage } from './checkedMessage.ts';
import type { CourseQuestion, CourseReport } from './courseMessages.ts';

const count = v.pipe(v.number(), v.integer(), v.minValue(0));
const date = v.pipe(v.string(), v.isoDate());

const request = v.custom<CourseRequest>(
  (value) =>
    v.is(
      v.object({
        history: v.object({ readings: v.array(v.object({ visitedOn: date })), events: v.array(v.unknown()) }),
        job: v.object({ doneOn: date }),
        untilOn: v.nullable(date),
        thresholdCentsPerYear: v.pipe(v.number(), v.gtValue(0)),
      }),
      value,
    ),
  'not a question about a course',
);

const state = v.picklist(['holding', 'watch', 'giving way', 'not enough evidence']);

const report = v.variant('kind', [
  v.object({ kind: v.literal('visit'), number: count, doneCount: count, allCount: count }),
  v.object({ kind: v.literal('course'), number: count, course: v.array(v.object({ visitedOn: date, state })) }),
  v.object({ kind: v.literal('failed'), number: count, detail: v.string() }),
]);

/** @throws {TypeError} naming the part of the message that does not fit */
export const parseCourseQuestion = (data: unknown): CourseQuestion =>
  checkedMessage(v.object({ number: count, request }), data);
/** @throws {TypeError} naming the part of the message that does not fit */
export const parseCourseReport = (data: unknown): CourseReport => checkedMessage(report, data);
