/** What the worker that looks back over an instrument's visits can be asked, and what it answers. */
import type { CourseRequest, StateOnDate } from '../stability/acrossInstruments/courseSince.ts';

export type CourseQuestion = { readonly number: number; readonly request: CourseRequest };

export type CourseReport =
  /** So many of the visits are judged. */
  | { readonly kind: 'visit'; readonly number: number; readonly doneCount: number; readonly allCount: number }
  | { readonly kind: 'course'; readonly number: number; readonly course: readonly StateOnDate[] }
  | { readonly kind: 'failed'; readonly number: number; readonly detail: string };
