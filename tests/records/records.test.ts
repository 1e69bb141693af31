import 'fake-indexeddb/auto';
import { afterEach, describe, expect, it } from 'vitest';
import type { Take } from '../../src/piano/instrument.ts';
import { newId } from '../../src/records/newId.ts';
import { openRecords, type Records } from '../../src/records/records.ts';
import {
  exampleEvent,
  exampleInstrument,
  exampleReading,
  exampleSurvey,
  exampleTake,
  exampleVisit,
} from './exampleRecords.ts';

const opened: Records[] = [];

async function freshRecords(name: string = newId()): Promise<Records> {
  const records = await openRecords(name);
  opened.push(records);
  return records;
}

afterEach(() => {
  for (const records of opened.splice(0)) records.close();
});

const instrument = exampleInstrument();
const visit = exampleVisit(instrument);
const survey = exampleSurvey(visit);

describe('instruments, events, visits and surveys', () => {
  it('come back as they were saved, after closing and opening again', async () => {
    const name = newId();
    const first = await freshRecords(name);
    const event = exampleEvent(instrument);
    for (const outcome of [
      await first.saveInstrument(instrument),
      await first.saveEvent(event),
      await first.saveVisit(visit),
      await first.saveSurvey(survey),
    ])
      expect(outcome).toEqual({ written: true });
    first.close();
    const second = await freshRecords(name);
    expect(await second.listInstruments()).toEqual([instrument]);
    expect(await second.instrument(instrument.id)).toEqual(instrument);
    expect(await second.eventsOf(instrument.id)).toEqual([event]);
    expect(await second.visit(visit.id)).toEqual(visit);
    expect(await second.survey(survey.id)).toEqual(survey);
    expect(await second.surveysOf(visit.id)).toEqual([survey]);
    expect(await second.surveysOfInstrument(instrument.id)).toEqual([survey]);
  });

  it('are updated, not doubled, when saved again', async () => {
    const records = await freshRecords();
    await records.saveInstrument(instrument);
    await records.saveInstrument({ ...instrument, remark: 'new felt' });
    expect(await records.listInstruments()).toEqual([{ ...instrument, remark: 'new felt' }]);
  });

  it('gives visits oldest first, of the asked instrument only', async () => {
    const records = await freshRecords();
    const other = exampleInstrument();
    for (const visitedOn of ['2021-05-04', '2019-02-03', '2020-11-30'])
      await records.saveVisit(exampleVisit(instrument, { visitedOn }));
    await records.saveVisit(exampleVisit(other));
    const dates = (await records.visitsOf(instrument.id)).map((row) => row.visitedOn);
    expect(dates).toEqual(['2019-02-03', '2020-11-30', '2021-05-04']);
  });

  it('says undefined for an id that nobody saved', async () => {
    const records = await freshRecords();
    expect(await records.visit(newId())).toBeUndefined();
  });

  it('refuses what is not a record and names the field', async () => {
    const records = await freshRecords();
    const outcome = await records.saveVisit({ ...visit, visitedOn: '4 May' });
    expect(outcome).toMatchObject({ written: false, reason: 'not-a-record' });
    expect(!outcome.written && outcome.message).toMatch(/visitedOn/);
    expect(await records.visitsOf(instrument.id)).toEqual([]);
  });

  it('keep which notes a survey asked for, and refuse what names none', async () => {
    const records = await freshRecords();
    for (const scope of [
      { kind: 'sample', notesMidi: [21, 40, 41] },
      { kind: 'section', fromMidi: 41, toMidi: 58 },
      { kind: 'chosen', notesMidi: [60] },
    ] as const) {
      const asked = exampleSurvey(visit, { scope });
      expect(await records.saveSurvey(asked)).toEqual({ written: true });
      expect(await records.survey(asked.id)).toEqual(asked);
    }
    const broken = exampleSurvey(visit, { scope: { kind: 'section', fromMidi: 41, toMidi: 999 } });
    expect(await records.saveSurvey(broken)).toMatchObject({ written: false, reason: 'not-a-record' });
  });

  it('keeps a field that this version does not know', async () => {
    const records = await freshRecords();
    const fromLater = { ...instrument, lidProp: 'half' };
    await records.saveInstrument(fromLater);
    expect(await records.instrument(instrument.id)).toEqual(fromLater);
  });
});

describe('keepTake', () => {
  const earlier = exampleTake(survey, { recordedAt: '2021-05-04T09:01:00.000Z' });
  const later = exampleTake(survey, { recordedAt: '2021-05-04T09:02:00.000Z' });
  const keptIds = async (records: Records): Promise<string[]> =>
    (await records.takesOfSurvey(survey.id)).filter((take) => take.isKept).map((take) => take.id);

  it('gives an empty place to the first take', async () => {
    const records = await freshRecords();
    expect(await records.keepTake(earlier)).toEqual({ written: true, isKept: true, setAside: null });
    expect(await records.takesOfSurvey(survey.id)).toEqual([earlier]);
  });

  it('lets the newcomer win where nobody compares, and sets the loser aside without deleting it', async () => {
    const records = await freshRecords();
    await records.keepTake(earlier);
    expect(await records.keepTake(later)).toEqual({ written: true, isKept: true, setAside: earlier.id });
    expect(await records.takesOfSurvey(survey.id)).toEqual([{ ...earlier, isKept: false }, later]);
  });

  it('asks the comparison and keeps the earlier take where the newcomer is no better', async () => {
    const records = await freshRecords();
    await records.keepTake(earlier);
    const asked: Take[][] = [];
    const isBetter = (newcomer: Take, keptNow: Take): boolean => {
      asked.push([newcomer, keptNow]);
      return false;
    };
    expect(await records.keepTake(later, { isBetter })).toEqual({ written: true, isKept: false, setAside: null });
    expect(asked).toEqual([[later, earlier]]);
    expect(await records.takesOfSurvey(survey.id)).toEqual([earlier, { ...later, isKept: false }]);
  });

  it('stores a take aside that does not ask for the place', async () => {
    const records = await freshRecords();
    await records.keepTake({ ...earlier, isKept: false });
    expect(await keptIds(records)).toEqual([]);
    await records.keepTake(later);
    await records.keepTake({ ...earlier, isKept: false });
    expect(await keptIds(records)).toEqual([later.id]);
  });

  it('keeps one take for each string of a note and for each survey', async () => {
    const records = await freshRecords();
    const left = exampleTake(survey, { reading: exampleReading({ stringPosition: 1 }) });
    const elsewhere = exampleTake(exampleSurvey(visit));
    for (const take of [earlier, left, elsewhere]) await records.keepTake(take);
    expect((await records.keptTakesOfInstrument(instrument.id)).map((take) => take.id).sort()).toEqual(
      [earlier.id, left.id, elsewhere.id].sort(),
    );
  });

  it('may be asked twice for the same take', async () => {
    const records = await freshRecords();
    await records.keepTake(earlier);
    expect(await records.keepTake(earlier)).toEqual({ written: true, isKept: true, setAside: null });
    expect(await records.takesOfSurvey(survey.id)).toEqual([earlier]);
  });

  it('refuses a reading with a figure that is not a number and names it', async () => {
    const records = await freshRecords();
    const take = { ...earlier, reading: exampleReading({ partial1Hz: Number.NaN }) };
    const outcome = await records.keepTake(take);
    expect(outcome).toMatchObject({ written: false, reason: 'not-a-record' });
    expect(!outcome.written && outcome.message).toMatch(/partial1Hz/);
  });

  it('keeps only one of many takes written at the same time', async () => {
    const records = await freshRecords();
    const takes = Array.from({ length: 12 }, () => exampleTake(survey));
    await Promise.all(takes.map((take) => records.keepTake(take)));
    expect(await records.takesOfSurvey(survey.id)).toHaveLength(12);
    expect(await keptIds(records)).toHaveLength(1);
  });
});

describe('setKept', () => {
  it('hands the place over and back', async () => {
    const records = await freshRecords();
    const [first, second] = [exampleTake(survey), exampleTake(survey)];
    await records.keepTake(first);
    await records.keepTake(second);
    await records.setKept(first.id, true);
    expect((await records.take(first.id))?.isKept).toBe(true);
    expect((await records.take(second.id))?.isKept).toBe(false);
    await records.setKept(first.id, false);
    expect(await records.keptTakesOfInstrument(instrument.id)).toEqual([]);
  });

  it('says so where there is no such take', async () => {
    const records = await freshRecords();
    expect(await records.setKept(newId(), true)).toMatchObject({ written: false, reason: 'not-a-record' });
  });
});

describe('changeTakeNote', () => {
  it('counts the offset from the new note and leaves the frequencies', async () => {
    const records = await freshRecords();
    const take = exampleTake(survey);
    await records.keepTake(take);
    expect(await records.changeTakeNote(take.id, 70)).toEqual({ written: true });
    const moved = await records.take(take.id);
    // One semitone is 100 cents: what was +1.966 against A4 (1200·log2(440.5/440)) is −98.034 against A#4.
    expect(moved?.reading.offsetCents).toBeCloseTo(-98.034, 3);
    expect(moved).toMatchObject({ midi: 70, isKept: true, reading: { midi: 70, partial1Hz: 440.5 } });
    expect(moved?.reading.partials).toEqual(take.reading.partials);
  });

  it('wins the place at the new note and keeps the take that stood there', async () => {
    const records = await freshRecords();
    const [wrong, there] = [exampleTake(survey), exampleTake(survey, { midi: 70 })];
    await records.keepTake(wrong);
    await records.keepTake(there);
    await records.changeTakeNote(wrong.id, 70);
    const takes = await records.takesOfSurvey(survey.id);
    expect(takes).toHaveLength(2);
    expect(takes.filter((take) => take.isKept).map((take) => take.id)).toEqual([wrong.id]);
  });

  it('takes a reading that was measured again, and refuses one of another note', async () => {
    const records = await freshRecords();
    const take = exampleTake(survey);
    await records.keepTake(take);
    const remeasured = exampleReading({ midi: 57, partial1Hz: 220.1 });
    expect(await records.changeTakeNote(take.id, 58, remeasured)).toMatchObject({ reason: 'not-a-record' });
    expect(await records.take(take.id)).toEqual(take);
    await records.changeTakeNote(take.id, 57, remeasured);
    expect(await records.take(take.id)).toEqual({ ...take, midi: 57, reading: remeasured });
  });
});

describe('observe', () => {
  it('tells each change to what the query read, until it is ended', async () => {
    const records = await freshRecords();
    const seen: number[] = [];
    let heard: () => void = () => undefined;
    const next = (): Promise<void> =>
      new Promise((resolve) => {
        heard = resolve;
      });
    const first = next();
    const end = records.observe(
      async () => (await records.takesOfSurvey(survey.id)).length,
      (count) => {
        seen.push(count);
        heard();
      },
      (error) => {
        throw error;
      },
    );
    await first;
    const second = next();
    await records.keepTake(exampleTake(survey));
    await second;
    end();
    await records.keepTake(exampleTake(survey));
    expect(await records.takesOfSurvey(survey.id)).toHaveLength(2);
    expect(seen).toEqual([0, 1]);
  });

  it('hands a failing query to onError', async () => {
    const records = await freshRecords();
    const error = await new Promise((resolve) => {
      records.observe(
        async () => {
          await records.listInstruments();
          throw new RangeError('no such thing');
        },
        () => undefined,
        resolve,
      );
    });
    expect(error).toBeInstanceOf(RangeError);
  });
});
