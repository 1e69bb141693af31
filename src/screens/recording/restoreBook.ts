/** A survey that was interrupted, by a reload or a year, goes on where the stored takes leave it. */
import type { Take } from '../../piano/instrument.ts';
import { nextSurveyBook, openSurveyBook, type SurveyBook } from '../../survey/surveyBook.ts';
import type { PlanItem } from '../../survey/surveyPlan.ts';
import { keptTakes } from './recordSteps.ts';

/**
 * The book as the takes leave it, in the order recorded. A usable take that the records do not keep, though no better one is
 * there, had been set aside by hand and stays so. What had been skipped is asked for again. Nothing can be undone at first.
 */
export function restoreBook(plan: readonly PlanItem[], takes: readonly Take[]): SurveyBook {
  let book = openSurveyBook(plan);
  for (const { id, reading, recordedAt } of takes)
    book = nextSurveyBook(book, { kind: 'heard', id, reading, atS: Date.parse(recordedAt) / 1000 });
  for (let refused = refusedTake(book, takes); refused; refused = refusedTake(book, takes))
    book = nextSurveyBook(book, { kind: 'set-aside', takeId: refused.id });
  const first = book.takes.length === 0 ? 0 : book.expectedIndex;
  return { ...book, expectedIndex: first, wasPausedSinceLastTake: true, undoSteps: [] };
}

/** A take that the book would keep and the records do not. */
function refusedTake(book: SurveyBook, takes: readonly Take[]): Take | undefined {
  const wouldKeep = new Set(keptTakes(book.takes).values());
  return takes.find((take) => wouldKeep.has(take.id) && !take.isKept);
}
