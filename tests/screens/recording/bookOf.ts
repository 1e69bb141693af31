import type { TakeId } from '../../../src/piano/ids.ts';
import type { NoteReading } from '../../../src/piano/reading.ts';
import { nextSurveyBook, openSurveyBook, type SurveyBook } from '../../../src/survey/surveyBook.ts';
import { type PlanItem, planOfCompass } from '../../../src/survey/surveyPlan.ts';

export const FIVE_NOTES = planOfCompass({ lowestMidi: 60, highestMidi: 64 }, 2);

export const idOf = (index: number) => `t${index}` as TakeId;

/** A survey in which these readings were heard one after the other, three seconds apart; ids are t0, t1, … */
export function bookOf(readings: readonly NoteReading[], plan: readonly PlanItem[] = FIVE_NOTES): SurveyBook {
  return readings.reduce(
    (book, reading, index) => nextSurveyBook(book, { kind: 'heard', id: idOf(index), reading, atS: 3 * index }),
    openSurveyBook(plan),
  );
}
