import { describe, expect, it } from 'vitest';
import type { InstrumentId, SurveyId, VisitId } from '../../../src/piano/ids.ts';
import type { Take } from '../../../src/piano/instrument.ts';
import type { NoteReading } from '../../../src/piano/reading.ts';
import { recordingCells } from '../../../src/screens/recording/recordingState.ts';
import { restoreBook } from '../../../src/screens/recording/restoreBook.ts';
import { readingAt } from '../plainReading.ts';
import { FIVE_NOTES, idOf } from './bookOf.ts';

function stored(index: number, reading: NoteReading, isKept = true): Take {
  return {
    id: idOf(index),
    surveyId: 's' as SurveyId,
    visitId: 'v' as VisitId,
    instrumentId: 'i' as InstrumentId,
    midi: reading.midi,
    stringPosition: reading.stringPosition,
    recordedAt: new Date(Date.UTC(2024, 2, 1, 10, 0, 3 * index)).toISOString(),
    isKept,
    reading,
  };
}
const statesOf = (takes: Take[]) => recordingCells(restoreBook(FIVE_NOTES, takes), new Map()).map((cell) => cell.state);

describe('a survey that goes on', () => {
  it('starts at the bottom where nothing was stored', () => {
    expect(restoreBook(FIVE_NOTES, []).expectedIndex).toBe(0);
  });

  it('expects the note after the last stored one', () => {
    const book = restoreBook(FIVE_NOTES, [stored(0, readingAt(60, 0)), stored(1, readingAt(61, 0))]);
    expect(book.plan[book.expectedIndex ?? -1]?.midi).toBe(62);
  });

  it('shows the same states as before', () => {
    const faulty = stored(1, readingAt(61, 0, { faults: ['too-short'] }), false);
    expect(statesOf([stored(0, readingAt(60, 0)), faulty])).toEqual([
      'kept',
      'doubtful',
      'missing',
      'missing',
      'missing',
    ]);
  });

  it('leaves aside what had been set aside by hand, also where a worse take is kept instead', () => {
    expect(statesOf([stored(0, readingAt(60, 0), false)])[0]).toBe('missing');
    const worse = { ...readingAt(60, 0), partial1StandardUncertaintyHz: 1 };
    const book = restoreBook(FIVE_NOTES, [stored(0, worse), stored(1, readingAt(60, 0), false)]);
    expect(book.takes.map((take) => take.isSetAside)).toEqual([false, true]);
  });

  it('cannot undo what was done before, and does not count the time between as playing', () => {
    const book = restoreBook(FIVE_NOTES, [stored(0, readingAt(60, 0))]);
    expect(book.undoSteps).toEqual([]);
    expect(book.wasPausedSinceLastTake).toBe(true);
  });
});
