import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { afterEach, describe, expect, it } from 'vitest';
import type { TorqueId } from '../../src/piano/ids.ts';
import { newId } from '../../src/records/newId.ts';
import type { RecordSet } from '../../src/records/recordSet.ts';
import { openRecords, type Records } from '../../src/records/records.ts';
import {
  anyReading,
  exampleEvent,
  exampleInstrument,
  exampleReading,
  exampleSurvey,
  exampleTake,
  exampleVisit,
} from './exampleRecords.ts';

const opened: Records[] = [];

async function freshRecords(): Promise<Records> {
  const records = await openRecords(newId());
  opened.push(records);
  return records;
}

afterEach(() => {
  for (const records of opened.splice(0)) records.close();
});

function exampleSet(isDemonstration = false): RecordSet {
  const instrument = exampleInstrument({ isDemonstration });
  const visit = exampleVisit(instrument);
  const survey = exampleSurvey(visit);
  const takes = [exampleTake(survey, { isKept: false }), exampleTake(survey, { midi: 70 })];
  const torque = {
    id: newId<TorqueId>(),
    instrumentId: instrument.id,
    visitId: visit.id,
    midi: 70,
    stringPosition: 2,
    torqueNm: 8.5,
    direction: 'flatwards',
    remark: '',
  } as const;
  const rows = { events: [exampleEvent(instrument)], visits: [visit], surveys: [survey], takes, torques: [torque] };
  return { ...EMPTY, instruments: [instrument], ...rows };
}

const EMPTY: RecordSet = {
  instruments: [],
  events: [],
  visits: [],
  surveys: [],
  takes: [],
  torques: [],
  schedules: [],
  decisions: [],
  trials: [],
};

function inOrder(set: RecordSet): RecordSet {
  return { ...set, takes: [...set.takes].sort((a, b) => (a.id < b.id ? -1 : 1)) };
}

describe('writeRecordSet and readRecordSet', () => {
  it('give back one instrument whole and leave the others out', async () => {
    const records = await freshRecords();
    const [mine, other] = [exampleSet(), exampleSet()];
    expect(await records.writeRecordSet(mine)).toEqual({ written: true });
    await records.writeRecordSet(other);
    expect(inOrder(await records.readRecordSet(mine.instruments[0]?.id))).toEqual(inOrder(mine));
    expect((await records.readRecordSet()).takes).toHaveLength(4);
  });

  it('bring every reading through the database exactly', async () => {
    const records = await freshRecords();
    const survey = exampleSurvey(exampleVisit(exampleInstrument()));
    await fc.assert(
      fc.asyncProperty(anyReading, async (reading) => {
        const take = exampleTake(survey, { reading });
        expect(await records.writeRecordSet({ ...EMPTY, takes: [take] })).toEqual({ written: true });
        expect(await records.take(take.id)).toStrictEqual(take);
      }),
      { numRuns: 100, seed: 20261 },
    );
  });

  it('write nothing at all where one row is not a record', async () => {
    const records = await freshRecords();
    const set = exampleSet();
    const bad = exampleTake(exampleSurvey(exampleVisit(exampleInstrument())), {
      reading: exampleReading({ durationS: Number.NaN }),
    });
    const outcome = await records.writeRecordSet({ ...set, takes: [...set.takes, bad] });
    expect(outcome).toMatchObject({ written: false, reason: 'not-a-record' });
    expect(await records.readRecordSet()).toEqual(EMPTY);
  });
});

describe('the demonstration', () => {
  it('is taken away without touching anybody’s own records', async () => {
    const records = await freshRecords();
    const [own, invented] = [exampleSet(), exampleSet(true)];
    await records.writeRecordSet(own);
    expect(await records.hasDemonstration()).toBe(false);
    await records.writeRecordSet(invented);
    expect(await records.hasDemonstration()).toBe(true);
    expect(await records.removeDemonstration()).toEqual({ written: true });
    expect(await records.hasDemonstration()).toBe(false);
    expect(inOrder(await records.readRecordSet())).toEqual(inOrder(own));
  });
});
