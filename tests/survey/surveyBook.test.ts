import { describe, expect, it } from 'vitest';
import type { ItemState } from '../../src/survey/bookStates.ts';
import { type BookEvent, nextSurveyBook, openSurveyBook, type SurveyBook } from '../../src/survey/surveyBook.ts';
import { planOfCompass, planOfStrings } from '../../src/survey/surveyPlan.ts';
import { expectedItem, lastHeardTake, progressOf, statusesOf } from '../../src/survey/surveyProgress.ts';
import { type PlainReading, plainReading, takeId } from './plainReading.ts';

const PLAN = planOfCompass({ lowestMidi: 60, highestMidi: 64 }, 2);

function heard(number: number, facts: PlainReading, atS = 3 * number): BookEvent {
  return { kind: 'heard', id: takeId(number), reading: plainReading(facts), atS };
}

function bookAfter(events: readonly BookEvent[], plan = PLAN): SurveyBook {
  return events.reduce(nextSurveyBook, openSurveyBook(plan));
}

const expectedMidi = (book: SurveyBook) => expectedItem(book)?.midi ?? null;
const states = (book: SurveyBook): ItemState[] => statusesOf(book).map(({ state }) => state);

describe('what is expected next', () => {
  it.each<{ why: string; events: BookEvent[]; expected: number | null }>([
    { why: 'the lowest note at first', events: [], expected: 60 },
    { why: 'the note above one that is kept', events: [heard(1, { midi: 60 })], expected: 61 },
    { why: 'the note above the one really played', events: [heard(1, { midi: 62 })], expected: 63 },
    {
      why: 'past the notes that are kept',
      events: [heard(1, { midi: 61 }), heard(2, { midi: 62 }), heard(3, { midi: 60 })],
      expected: 63,
    },
    { why: 'the same note after an unusable take', events: [heard(1, { midi: 60, isUsable: false })], expected: 60 },
    {
      why: 'a note left behind, at the top',
      events: [heard(1, { midi: 61 }), heard(2, { midi: 63 }), heard(3, { midi: 64 })],
      expected: 60,
    },
    {
      why: 'a missing note before a doubtful one',
      events: [heard(1, { midi: 60, isUsable: false }), heard(2, { midi: 61 })],
      expected: 62,
    },
    {
      why: 'a doubtful note once none is missing',
      events: [
        heard(1, { midi: 60 }),
        heard(2, { midi: 61, isUsable: false }),
        heard(3, { midi: 62 }),
        heard(4, { midi: 63 }),
        heard(5, { midi: 64 }),
      ],
      expected: 61,
    },
    {
      why: 'nothing when all are kept',
      events: [60, 61, 62, 63, 64].map((midi, index) => heard(index, { midi })),
      expected: null,
    },
    { why: 'the note before, after back', events: [heard(1, { midi: 60 }), { kind: 'back' }], expected: 60 },
    { why: 'no note below the lowest', events: [{ kind: 'back' }], expected: 60 },
    { why: 'the next one, after skip', events: [{ kind: 'skip' }, { kind: 'skip' }], expected: 62 },
    {
      why: 'no skipped note again',
      events: [{ kind: 'skip' }, ...[61, 62, 63, 64].map((midi, index) => heard(index, { midi }))],
      expected: null,
    },
    { why: 'where one goes', events: [{ kind: 'go-to', item: { midi: 63, stringPosition: 2 } }], expected: 63 },
    {
      why: 'as before where the note is not in the plan',
      events: [heard(1, { midi: 60 }), heard(2, { midi: 90 })],
      expected: 61,
    },
  ])('is $why', ({ events, expected }) => {
    expect(expectedMidi(bookAfter(events))).toBe(expected);
  });

  it('follows a walk down', () => {
    const plan = planOfCompass({ lowestMidi: 60, highestMidi: 70 }, 0);
    const events = [70, 69, 68, 67].map((midi, index) => heard(index, { midi, stringPosition: 0 }));
    expect(expectedMidi(bookAfter(events, plan))).toBe(66);
  });

  it('goes through the strings of a note before the next note', () => {
    const plan = planOfStrings({ lowestMidi: 60, highestMidi: 61 }, () => 3);
    const book = bookAfter([heard(1, { midi: 60, stringPosition: 1 })], plan);
    expect(expectedItem(book)).toEqual({ midi: 60, stringPosition: 2 });
    expect(progressOf(book).totalCount).toBe(6);
  });
});

describe('the state of each note', () => {
  it('is kept with a usable take, doubtful with none but unusable ones, else missing', () => {
    const book = bookAfter([heard(1, { midi: 60 }), heard(2, { midi: 61, isUsable: false })]);
    expect(states(book)).toEqual(['kept', 'doubtful', 'missing', 'missing', 'missing']);
  });

  it('keeps every take of a note and marks the better one', () => {
    const book = bookAfter([heard(1, { midi: 60, uncertaintyHz: 0.01 }), heard(2, { midi: 60, uncertaintyHz: 0.5 })]);
    expect(statusesOf(book)[0]).toMatchObject({ keptTakeId: takeId(1), takeIds: [takeId(1), takeId(2)] });
  });

  it('turns from doubtful to kept by a better take', () => {
    const book = bookAfter([heard(1, { midi: 60, isUsable: false }), heard(2, { midi: 60 })]);
    expect(statusesOf(book)[0]).toMatchObject({ state: 'kept', keptTakeId: takeId(2) });
    expect(expectedMidi(book)).toBe(61);
  });

  it('is no longer skipped once the note is played', () => {
    const book = bookAfter([{ kind: 'skip' }, heard(1, { midi: 60 })]);
    expect(statusesOf(book)[0]).toMatchObject({ state: 'kept', isSkipped: false });
  });
});

describe('that was another note', () => {
  const book = bookAfter([
    heard(1, { midi: 60 }),
    heard(2, { midi: 72 }),
    { kind: 'renamed', takeId: takeId(2), reading: plainReading({ midi: 61 }) },
  ]);

  it('files the take under the other note and goes on from there', () => {
    expect(states(book).slice(0, 2)).toEqual(['kept', 'kept']);
    expect(expectedMidi(book)).toBe(62);
    expect(lastHeardTake(book)?.reading.midi).toBe(61);
  });

  it('can be undone', () => {
    const undone = nextSurveyBook(book, { kind: 'undo' });
    expect(lastHeardTake(undone)?.reading.midi).toBe(72);
    expect(expectedMidi(undone)).toBe(61);
  });
});

describe('undo', () => {
  it('sets a take aside and expects its note again, and loses nothing', () => {
    const book = bookAfter([heard(1, { midi: 60 }), heard(2, { midi: 61 }), { kind: 'undo' }]);
    expect(states(book).slice(0, 2)).toEqual(['kept', 'missing']);
    expect(expectedMidi(book)).toBe(61);
    expect(book.takes.map(({ id, isSetAside }) => [id, isSetAside])).toEqual([
      [takeId(1), false],
      [takeId(2), true],
    ]);
  });

  it('brings back a take that was set aside', () => {
    const book = bookAfter([heard(1, { midi: 60 }), { kind: 'set-aside', takeId: takeId(1) }]);
    expect([states(book)[0], expectedMidi(book)]).toEqual(['missing', 60]);
    const undone = nextSurveyBook(book, { kind: 'undo' });
    expect([states(undone)[0], expectedMidi(undone)]).toEqual(['kept', 61]);
  });

  it('leads step by step back to the beginning, and then does nothing', () => {
    const events: BookEvent[] = [
      heard(1, { midi: 60 }),
      { kind: 'skip' },
      { kind: 'back' },
      { kind: 'go-to', item: { midi: 64, stringPosition: 2 } },
      heard(2, { midi: 64, isUsable: false }),
    ];
    const undone = bookAfter([...events, ...events.map((): BookEvent => ({ kind: 'undo' })), { kind: 'undo' }]);
    expect(states(undone)).toEqual(states(openSurveyBook(PLAN)));
    expect(expectedMidi(undone)).toBe(60);
    expect(undone.skippedIndexes).toEqual([]);
    expect(undone.takes).toHaveLength(2);
  });
});

describe('progress', () => {
  it('counts, and estimates the time left from the pace so far', () => {
    const book = bookAfter([heard(1, { midi: 60 }, 10), heard(2, { midi: 61 }, 13), heard(3, { midi: 62 }, 16)]);
    expect(progressOf(book)).toEqual({
      totalCount: 5,
      keptCount: 3,
      doubtfulCount: 0,
      missingCount: 2,
      skippedCount: 0,
      paceS: 3,
      remainingS: 6,
    });
  });

  it('leaves pauses out of the pace', () => {
    const book = bookAfter([
      heard(1, { midi: 60 }, 10),
      heard(2, { midi: 61 }, 13),
      { kind: 'pause' },
      { kind: 'resume' },
      heard(3, { midi: 62 }, 613),
      heard(4, { midi: 63 }, 617),
      heard(5, { midi: 64 }, 620),
    ]);
    expect(book.takes.map(({ sinceLastS }) => sinceLastS)).toEqual([null, 3, null, 4, 3]);
    expect(progressOf(book)).toMatchObject({ paceS: 3, remainingS: 0 });
  });

  it('knows no pace before the third take', () => {
    expect(progressOf(bookAfter([heard(1, { midi: 60 }), heard(2, { midi: 61 })])).remainingS).toBeNull();
  });

  it('does not count a skipped note as missing', () => {
    expect(progressOf(bookAfter([{ kind: 'skip' }]))).toMatchObject({ missingCount: 4, skippedCount: 1 });
  });
});

it('a take that is heard after the pause began is still filed', () => {
  const book = bookAfter([{ kind: 'pause' }, heard(1, { midi: 60 })]);
  expect(book.isPaused).toBe(true);
  expect(states(book)[0]).toBe('kept');
});

it('a sound without a note is told until the next note', () => {
  const event: BookEvent = { kind: 'nothing-heard', reason: 'speech', atS: 4 };
  expect(bookAfter([event]).lastNothing).toEqual({ reason: 'speech', atS: 4 });
  expect(bookAfter([event, heard(1, { midi: 60 })]).lastNothing).toBeNull();
});

it('an event about an unknown take changes nothing', () => {
  const book = bookAfter([heard(1, { midi: 60 })]);
  expect(nextSurveyBook(book, { kind: 'set-aside', takeId: takeId(9) })).toBe(book);
});

it('a book survives being written down and read', () => {
  const book = bookAfter([heard(1, { midi: 60 }), { kind: 'skip' }, { kind: 'pause' }]);
  expect(JSON.parse(JSON.stringify(book))).toEqual(book);
});

it('an empty plan is refused', () => {
  expect(() => openSurveyBook([])).toThrow(/plan/);
});
