import { describe, expect, it } from 'vitest';
import { heardQuality, heardSentence } from '../../../src/screens/recording/heard.ts';
import { lastHeard, recordingCells, storedCount } from '../../../src/screens/recording/recordingState.ts';
import { nextSurveyBook } from '../../../src/survey/surveyBook.ts';
import { readingAt } from '../plainReading.ts';
import { bookOf, idOf } from './bookOf.ts';

const good = readingAt(60, 1.5);
const faulty = readingAt(61, 0, { faults: ['two-notes'] });

describe('the cells', () => {
  it.each([
    ['storing', 'missing'],
    ['not-stored', 'missing'],
    ['stored', 'kept'],
  ] as const)('of a note whose take is %s are %s: kept means confirmed by the records', (write, state) => {
    expect(recordingCells(bookOf([good]), new Map([[idOf(0), write]]))[0]).toEqual({ midi: 60, state });
  });

  it('are counted as done on the same terms', () => {
    const book = bookOf([good, readingAt(61, 0), readingAt(62, 0, { faults: ['speech'] })]);
    expect(storedCount(book, new Map([[idOf(1), 'storing']]))).toBe(1);
    expect(storedCount(book, new Map())).toBe(2);
  });

  it('tell doubtful from kept and skipped from missing', () => {
    const book = nextSurveyBook(
      nextSurveyBook(bookOf([good, faulty]), { kind: 'go-to', item: { midi: 62, stringPosition: 2 } }),
      {
        kind: 'skip',
      },
    );
    const states = recordingCells(book, new Map()).map((cell) => cell.state);
    expect(states).toEqual(['kept', 'doubtful', 'skipped', 'missing', 'missing']);
  });

  it('of a note with several strings show the one that needs the player most', () => {
    const plan = [1, 2, 3].map((stringPosition) => ({ midi: 60, stringPosition: stringPosition as 1 | 2 | 3 }));
    const left = readingAt(60, 0, { stringPosition: 1 });
    expect(recordingCells(bookOf([left], plan), new Map())).toEqual([{ midi: 60, state: 'missing' }]);
  });
});

describe('what was heard last', () => {
  it('is nothing at first', () => {
    expect(lastHeard(bookOf([]), new Map())).toBeNull();
  });

  it('is not said to be kept, nor read out, before the records have answered', () => {
    const heard = lastHeard(bookOf([good]), new Map([[idOf(0), 'storing']]));
    expect(heard && heardQuality(heard).state).toBe('pending');
    expect(heard && heardSentence(heard)).toBe('');
  });

  it('is read out as kept with its cents once stored', () => {
    const heard = lastHeard(bookOf([good]), new Map([[idOf(0), 'stored']]));
    expect(heard && heardSentence(heard)).toMatch(/^C4, \+1\.50 .*cents, kept$/);
  });

  it('says why a take is doubtful', () => {
    const heard = lastHeard(bookOf([faulty]), new Map());
    expect(heard && heardQuality(heard)).toEqual({ state: 'doubtful', text: 'stored, doubtful: two notes at once' });
  });

  it('says so where the earlier take stays the kept one', () => {
    const later = { ...good, partial1StandardUncertaintyHz: 1 };
    const heard = lastHeard(bookOf([good, later]), new Map());
    expect(heard?.storing).toBe('set-aside');
  });

  it('says when a take could not be stored', () => {
    const heard = lastHeard(bookOf([good]), new Map([[idOf(0), 'not-stored']]));
    expect(heard && heardQuality(heard)).toEqual({ state: 'missing', text: 'not stored' });
  });

  it('tells a knock from a note, and forgets it at the next note', () => {
    const knocked = nextSurveyBook(bookOf([good]), { kind: 'nothing-heard', reason: 'knock', atS: 9 });
    expect(lastHeard(knocked, new Map())).toMatchObject({ midi: null, noNote: 'knock' });
    const next = nextSurveyBook(knocked, { kind: 'heard', id: idOf(5), reading: readingAt(61, 0), atS: 12 });
    expect(lastHeard(next, new Map())?.midi).toBe(61);
  });
});
