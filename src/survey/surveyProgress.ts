/** What a screen shows of a live survey: where it stands, how far it has come, how long it will take. */
import type { BookTake, ItemStatus } from './bookStates.ts';
import { itemStatuses } from './bookStates.ts';
import type { SurveyBook } from './surveyBook.ts';
import type { PlanItem } from './surveyPlan.ts';

export type SurveyProgress = {
  readonly totalCount: number;
  readonly keptCount: number;
  readonly doubtfulCount: number;
  /** Neither heard nor skipped. */
  readonly missingCount: number;
  readonly skippedCount: number;
  /** Median time from take to take, pauses left out; null before the third take. */
  readonly paceS: number | null;
  /** What is missing and doubtful, at that pace; null while the pace is not known. */
  readonly remainingS: number | null;
};

export function statusesOf(book: SurveyBook): ItemStatus[] {
  return itemStatuses(book.plan, book.takes, book.skippedIndexes);
}

export function expectedItem(book: SurveyBook): PlanItem | null {
  return book.plan[book.expectedIndex ?? -1] ?? null;
}

/** The newest take that was not undone. */
export function lastHeardTake(book: SurveyBook): BookTake | null {
  return book.takes.findLast((take) => !take.isSetAside) ?? null;
}

export function progressOf(book: SurveyBook): SurveyProgress {
  const statuses = statusesOf(book);
  const count = (has: (status: ItemStatus) => boolean) => statuses.filter(has).length;
  const missingCount = count(({ state, isSkipped }) => state === 'missing' && !isSkipped);
  const doubtfulCount = count(({ state, isSkipped }) => state === 'doubtful' && !isSkipped);
  const paceS = paceOf(book.takes);
  return {
    totalCount: statuses.length,
    keptCount: count(({ state }) => state === 'kept'),
    doubtfulCount,
    missingCount,
    skippedCount: count(({ state, isSkipped }) => isSkipped && state !== 'kept'),
    paceS,
    remainingS: paceS === null ? null : paceS * (missingCount + doubtfulCount),
  };
}

/** The median over the newest takes follows a change of pace and ignores a talk in between. */
const PACE_TAKES = 20;

function paceOf(takes: readonly BookTake[]): number | null {
  const gaps = takes
    .flatMap(({ sinceLastS }) => sinceLastS ?? [])
    .slice(-PACE_TAKES)
    .sort((a, b) => a - b);
  return gaps.length < 2 ? null : (gaps[gaps.length >> 1] ?? null);
}
