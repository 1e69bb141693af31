import 'fake-indexeddb/auto';
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { Measured } from '../../src/piano/instrument.ts';
import { newId } from '../../src/records/newId.ts';
import { openRecords, type Records } from '../../src/records/records.ts';
import {
  exampleInstrument,
  exampleReading,
  exampleSound,
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
  vi.restoreAllMocks();
  for (const records of opened.splice(0)) records.close();
});

const instrument = exampleInstrument();
const survey = exampleSurvey(exampleVisit(instrument));

describe('saveSound', () => {
  it('stores the sound of a take, byte by byte, and one for each', async () => {
    const records = await freshRecords();
    const take = exampleTake(survey);
    await records.keepTake(take);
    const sound = exampleSound(take);
    expect(await records.sound(take.id)).toBeUndefined();
    expect(await records.saveSound(exampleSound(take, { bytes: Uint8Array.of(9) }))).toEqual({ written: true });
    expect(await records.saveSound(sound)).toEqual({ written: true });
    expect(await records.sound(take.id)).toEqual(sound);
    expect(await records.soundSizes()).toEqual({ takeIds: [take.id], byteCount: sound.bytes.length });
  });

  it('refuses a sound without a take, and one that is none', async () => {
    const records = await freshRecords();
    const take = exampleTake(survey);
    expect(await records.saveSound(exampleSound(take))).toMatchObject({ reason: 'not-a-record', message: /no take/ });
    await records.keepTake(take);
    expect(await records.saveSound(exampleSound(take, { sampleRateHz: 0 }))).toMatchObject({ reason: 'not-a-record' });
    expect((await records.soundSizes()).takeIds).toEqual([]);
  });

  it('changes nothing about the take, whether it succeeds or the storage is full', async () => {
    const records = await freshRecords();
    const take = exampleTake(survey);
    await records.keepTake(take);
    const put = IDBObjectStore.prototype.put;
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...values) {
      if (this.name === 'sounds') throw new DOMException('The storage is full.', 'QuotaExceededError');
      return put.apply(this, values);
    });
    expect(await records.saveSound(exampleSound(take))).toMatchObject({ written: false, reason: 'storage-full' });
    expect(await records.takesOfSurvey(survey.id)).toEqual([take]);
    const next = exampleTake(survey, { midi: 70 });
    expect(await records.keepTake(next)).toMatchObject({ written: true, isKept: true });
    expect(await records.sound(take.id)).toBeUndefined();
  });

  it('never opens the sounds while a take is stored', async () => {
    const transactions = vi.spyOn(IDBDatabase.prototype, 'transaction');
    const records = await freshRecords();
    transactions.mockClear();
    await records.keepTake(exampleTake(survey));
    const stores = transactions.mock.calls.flatMap(([names]) => [...names]);
    expect(stores).toContain('takes');
    expect(stores).not.toContain('sounds');
  });
});

describe('soundSizes', () => {
  it('counts those of one survey, and all', async () => {
    const records = await freshRecords();
    const other = exampleSurvey(exampleVisit(instrument));
    const [first, second, third] = [exampleTake(survey), exampleTake(survey, { midi: 70 }), exampleTake(other)];
    for (const take of [first, second, third]) {
      await records.keepTake(take);
      await records.saveSound(exampleSound(take, { bytes: new Uint8Array(100) }));
    }
    const own = await records.soundSizes(survey.id);
    expect([...own.takeIds].sort()).toEqual([first.id, second.id].sort());
    expect(own.byteCount).toBe(200);
    expect((await records.soundSizes()).byteCount).toBe(300);
  });
});

describe('addReadings', () => {
  const measured: Measured = { programVersion: '9.9.9', measuredAt: '2031-02-03T04:05:06.000Z' };

  it('shows the new figures and keeps the old ones with what made them', async () => {
    const records = await freshRecords();
    const first: Measured = { programVersion: '0.1.0', measuredAt: '2021-05-04T09:01:00.000Z' };
    const take = exampleTake(survey, { measured: first });
    await records.keepTake(take);
    const again = exampleReading({ partial1Hz: 440.51, offsetCents: 2.005 });
    expect(await records.addReadings([{ takeId: take.id, reading: again, measured }])).toEqual({ written: true });
    const once = { ...take, reading: again, measured, earlierReadings: [{ reading: take.reading, measured: first }] };
    expect(await records.take(take.id)).toEqual(once);
    const third = exampleReading({ partial1Hz: 440.52 });
    await records.addReadings([{ takeId: take.id, reading: third, measured }]);
    expect((await records.take(take.id))?.earlierReadings?.map((earlier) => earlier.reading.partial1Hz)).toEqual([
      440.5, 440.51,
    ]);
    expect((await records.keptTakesOfInstrument(instrument.id))[0]?.reading.partial1Hz).toBe(440.52);
  });

  it('does not know who made a reading of a take that does not say so', async () => {
    const records = await freshRecords();
    const take = exampleTake(survey, { isKept: false });
    await records.keepTake(take);
    await records.addReadings([{ takeId: take.id, reading: exampleReading(), measured }]);
    expect(await records.take(take.id)).toMatchObject({ isKept: false, earlierReadings: [{ measured: null }] });
  });

  it('refuses the reading of another note', async () => {
    const records = await freshRecords();
    const take = exampleTake(survey);
    await records.keepTake(take);
    expect(
      await records.addReadings([{ takeId: take.id, reading: exampleReading({ midi: 70 }), measured }]),
    ).toMatchObject({
      reason: 'not-a-record',
    });
    expect(await records.take(take.id)).toEqual(take);
  });

  it('writes all of them or none', async () => {
    const records = await freshRecords();
    const take = exampleTake(survey);
    await records.keepTake(take);
    const further = (takeId: typeof take.id) => ({ takeId, reading: exampleReading({ partial1Hz: 441 }), measured });
    expect(await records.addReadings([further(take.id), further(newId())])).toMatchObject({ reason: 'not-a-record' });
    expect(await records.take(take.id)).toEqual(take);
  });
});

it('takes the sounds of the demonstration away with it and leaves the others', async () => {
  const records = await freshRecords();
  const invented = exampleInstrument({ isDemonstration: true });
  const inventedTake = exampleTake(exampleSurvey(exampleVisit(invented)));
  const take = exampleTake(survey);
  await records.saveInstrument(invented);
  for (const each of [inventedTake, take]) {
    await records.keepTake(each);
    await records.saveSound(exampleSound(each));
  }
  await records.removeDemonstration();
  expect((await records.soundSizes()).takeIds).toEqual([take.id]);
});
