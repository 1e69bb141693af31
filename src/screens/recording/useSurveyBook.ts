import { useRef, useState } from 'react';
import { heldTakes } from '../../listening/heldTakes.ts';
import { type BookEvent, nextSurveyBook, type SurveyBook } from '../../survey/surveyBook.ts';
import { recordingPlan } from './recordingPlan.ts';
import { restoreBook } from './restoreBook.ts';
import type { StoredSurvey } from './storedSurvey.ts';

export type LiveBook = {
  readonly book: SurveyBook;
  /** The newest state, also between two pictures. */
  readonly latest: () => SurveyBook;
  /** Returns the book before and after the event. */
  readonly happen: (event: BookEvent) => { readonly before: SurveyBook; readonly after: SurveyBook };
};

/** The survey's book while the screen is open, begun from what is stored and what is still held. */
export function useSurveyBook({ survey, instrument, takes }: StoredSurvey): LiveBook {
  const [book, setBook] = useState(() =>
    restoreBook(recordingPlan(survey.strings, instrument, survey.scope), [...takes, ...heldTakes(survey.id)]),
  );
  const newest = useRef(book);
  const happen = (event: BookEvent) => {
    const before = newest.current;
    newest.current = nextSurveyBook(before, event);
    setBook(newest.current);
    return { before, after: newest.current };
  };
  return { book, latest: () => newest.current, happen };
}
