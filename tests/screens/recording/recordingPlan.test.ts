import { describe, expect, it } from 'vitest';
import { COMPASS_88 } from '../../../src/piano/compass.ts';
import type { InstrumentId } from '../../../src/piano/ids.ts';
import type { Instrument } from '../../../src/piano/instrument.ts';
import { placedReading, recordingPlan, usualStringCount } from '../../../src/screens/recording/recordingPlan.ts';
import { nextSurveyBook } from '../../../src/survey/surveyBook.ts';
import { readingAt } from '../plainReading.ts';
import { bookOf } from './bookOf.ts';

const INSTRUMENT: Instrument = {
  id: 'i1' as InstrumentId,
  name: 'Hall grand',
  kind: 'grand',
  builtYear: null,
  serialNumber: '',
  compass: COMPASS_88,
  bassBridgeTopMidi: 44,
  strutsAfterMidi: [],
  pinBlock: '',
  remark: '',
  isDemonstration: false,
};

describe('the plan of a survey', () => {
  it('asks for one take a note, of the centre string or of the whole unison', () => {
    const centre = recordingPlan('centre strings', INSTRUMENT);
    const open = recordingPlan('open unisons', INSTRUMENT);
    expect([centre.length, open.length]).toEqual([88, 88]);
    expect(new Set(centre.map((item) => item.stringPosition))).toEqual(new Set([2]));
    expect(new Set(open.map((item) => item.stringPosition))).toEqual(new Set([0]));
  });

  it('asks for each single string as many times as notes usually have strings', () => {
    expect([21, 30, 31, 44, 45, 108].map((midi) => usualStringCount(midi, INSTRUMENT))).toEqual([1, 1, 2, 2, 3, 3]);
    expect(recordingPlan('single strings', INSTRUMENT).length).toBe(10 + 2 * 14 + 3 * 64);
  });

  it('follows the notes that the survey asks for, with all strings of each', () => {
    const section = recordingPlan('centre strings', INSTRUMENT, { kind: 'section', fromMidi: 44, toMidi: 46 });
    expect(section.map((item) => item.midi)).toEqual([44, 45, 46]);
    const chosen = recordingPlan('single strings', INSTRUMENT, { kind: 'chosen', notesMidi: [60, 25] });
    expect(chosen.map((item) => [item.midi, item.stringPosition])).toEqual([
      [25, 1],
      [60, 1],
      [60, 2],
      [60, 3],
    ]);
  });

  it('asks for everything rather than nothing where the compass was changed since', () => {
    expect(recordingPlan('open unisons', INSTRUMENT, { kind: 'chosen', notesMidi: [5] })).toHaveLength(88);
  });
});

describe('the string of a take, where each is recorded alone,', () => {
  const plan = recordingPlan('single strings', {
    ...INSTRUMENT,
    compass: { lowestMidi: 60, highestMidi: 61 },
    bassBridgeTopMidi: 40,
  });
  const heard = readingAt(60, 0);
  const place = (reading = heard, book = bookOf([], plan)) =>
    placedReading(reading, book, 'single strings').stringPosition;

  it('is the expected one', () => {
    expect(plan.filter((item) => item.midi === 60).map((item) => item.stringPosition)).toEqual([1, 2, 3]);
    expect(place()).toBe(1);
    const after = nextSurveyBook(bookOf([], plan), { kind: 'skip' });
    expect(place(heard, after)).toBe(2);
  });

  it('is the first that still lacks a take where another note was played', () => {
    const book = bookOf([readingAt(61, 0, { stringPosition: 1 }), readingAt(61, 0, { stringPosition: 2 })], plan);
    const elsewhere = nextSurveyBook(book, { kind: 'go-to', item: { midi: 60, stringPosition: 1 } });
    expect(place(readingAt(61, 0), elsewhere)).toBe(3);
  });

  it('is left as measured where strings are not recorded alone', () => {
    expect(placedReading(heard, bookOf([]), 'centre strings')).toBe(heard);
  });
});
