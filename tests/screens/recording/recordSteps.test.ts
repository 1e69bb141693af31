import { describe, expect, it } from 'vitest';
import { recordSteps, renamedReading } from '../../../src/screens/recording/recordSteps.ts';
import { nextSurveyBook } from '../../../src/survey/surveyBook.ts';
import { readingAt } from '../plainReading.ts';
import { bookOf, idOf } from './bookOf.ts';

const worse = { ...readingAt(60, 0), partial1StandardUncertaintyHz: 1 };
const better = readingAt(60, 0);

describe('what the records have to do', () => {
  it('is nothing when the player only moves about', () => {
    const book = bookOf([better]);
    for (const event of [{ kind: 'back' }, { kind: 'skip' }, { kind: 'pause' }] as const)
      expect(recordSteps(book, nextSurveyBook(book, event))).toEqual([]);
  });

  it('when the only take is undone: keep it no longer', () => {
    const book = bookOf([better]);
    expect(recordSteps(book, nextSurveyBook(book, { kind: 'undo' }))).toEqual([
      { kind: 'set-kept', takeId: idOf(0), isKept: false },
    ]);
  });

  it('when the better of two is undone: keep the other again', () => {
    const book = bookOf([worse, better]);
    expect(recordSteps(book, nextSurveyBook(book, { kind: 'undo' }))).toEqual([
      { kind: 'set-kept', takeId: idOf(0), isKept: true },
    ]);
  });

  it('when a faulty take is undone: nothing, for it was never kept', () => {
    const book = bookOf([readingAt(60, 0, { faults: ['knock'] })]);
    expect(recordSteps(book, nextSurveyBook(book, { kind: 'undo' }))).toEqual([]);
  });

  it('when a take turns out to be of another note: move it, kept as it was', () => {
    const book = bookOf([better]);
    const reading = renamedReading(better, 62);
    expect(recordSteps(book, nextSurveyBook(book, { kind: 'renamed', takeId: idOf(0), reading }))).toEqual([
      { kind: 'change-note', takeId: idOf(0), reading },
      { kind: 'set-kept', takeId: idOf(0), isKept: true },
    ]);
  });

  it('when it moves to a note with a better take: that one stays the kept one', () => {
    const book = bookOf([readingAt(62, 0), worse]);
    const reading = renamedReading(worse, 62);
    const steps = recordSteps(book, nextSurveyBook(book, { kind: 'renamed', takeId: idOf(1), reading }));
    expect(steps.at(-1)).toEqual({ kind: 'set-kept', takeId: idOf(0), isKept: true });
  });
});

it('renamedReading counts the offset from the new note and leaves the frequency alone', () => {
  const reading = readingAt(60, 3);
  expect(renamedReading(reading, 61).offsetCents).toBeCloseTo(-97, 9);
  expect(renamedReading(reading, 61).partial1Hz).toBe(reading.partial1Hz);
});
