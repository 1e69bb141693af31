/**
 * Files that the user chose for a survey on one screen and another screen is to read. A browser hands files to a page only; they
 * cannot be part of an address, and a page that is loaded again has them no more.
 */
import type { SurveyId } from '../piano/ids.ts';

const chosen = new Map<SurveyId, readonly File[]>();

export function chooseRecordings(surveyId: SurveyId, files: readonly File[]): void {
  chosen.set(surveyId, files);
}

/** Each choice is handed out once. */
export function takeChosenRecordings(surveyId: SurveyId): readonly File[] | undefined {
  const files = chosen.get(surveyId);
  chosen.delete(surveyId);
  return files;
}
