import 'fake-indexeddb/auto';
import { Dexie } from 'dexie';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { createDatabase, RecordsUnavailableError, SCHEMA_VERSION } from '../../src/records/database.ts';
import { newId } from '../../src/records/newId.ts';
import { openRecords, type Records } from '../../src/records/records.ts';
import { failureOf } from '../../src/records/writeOutcome.ts';
import { exampleInstrument, exampleSurvey, exampleTake, exampleVisit } from './exampleRecords.ts';

const opened: Records[] = [];

async function freshRecords(name: string = newId()): Promise<Records> {
  const records = await openRecords(name);
  opened.push(records);
  return records;
}

afterEach(() => {
  vi.restoreAllMocks();
  for (const records of opened.splice(0)) records.close();
});

const instrument = exampleInstrument();
const survey = exampleSurvey(exampleVisit(instrument));

/** From now on every write is refused, as by a browser whose storage is full. */
function fillTheStorage(): void {
  vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
    throw new DOMException('The storage is full.', 'QuotaExceededError');
  });
}

describe('a full storage', () => {
  it('is told as a value, and what was written before is intact', async () => {
    const records = await freshRecords();
    const first = exampleTake(survey);
    await records.keepTake(first);
    fillTheStorage();
    const refused = await records.keepTake(exampleTake(survey));
    expect(refused).toMatchObject({ written: false, reason: 'storage-full' });
    expect(!refused.written && refused.message).toMatch(/no room.*written before is safe/);
    expect(await records.saveInstrument(instrument)).toMatchObject({ written: false, reason: 'storage-full' });
    expect(await records.setKept(first.id, false)).toMatchObject({ written: false, reason: 'storage-full' });
    expect(await records.takesOfSurvey(survey.id)).toEqual([first]);
  });

  it('does not set the kept take aside for one that could not be written', async () => {
    const records = await freshRecords();
    const first = exampleTake(survey);
    await records.keepTake(first);
    const put = IDBObjectStore.prototype.put;
    let calls = 0;
    // The first write, which sets the kept take aside, passes; the second, the newcomer's, finds the storage full.
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...values) {
      calls += 1;
      if (calls > 1) throw new DOMException('The storage is full.', 'QuotaExceededError');
      return put.apply(this, values);
    });
    expect(await records.keepTake(exampleTake(survey))).toMatchObject({ reason: 'storage-full' });
    expect(calls).toBe(2);
    vi.restoreAllMocks();
    expect(await records.takesOfSurvey(survey.id)).toEqual([first]);
  });

  it('writes again once there is room', async () => {
    const records = await freshRecords();
    const take = exampleTake(survey);
    fillTheStorage();
    await records.keepTake(take);
    vi.restoreAllMocks();
    expect(await records.keepTake(take)).toMatchObject({ written: true });
    expect(await records.takesOfSurvey(survey.id)).toEqual([take]);
  });
});

describe('keepTake', () => {
  it('asks the browser to put the take on the disk before it says written', async () => {
    const transactions = vi.spyOn(IDBDatabase.prototype, 'transaction');
    const records = await freshRecords();
    transactions.mockClear();
    await records.keepTake(exampleTake(survey));
    const writing = transactions.mock.calls.filter(([, mode]) => mode === 'readwrite');
    expect(writing.length).toBeGreaterThan(0);
    for (const [, , options] of writing) expect(options).toEqual({ durability: 'strict' });
  });

  it('says closed after the records were closed', async () => {
    const records = await freshRecords();
    records.close();
    expect(await records.keepTake(exampleTake(survey))).toMatchObject({ written: false, reason: 'closed' });
  });
});

describe('failureOf', () => {
  it('finds the cause however deep it lies', () => {
    const quota = new DOMException('full', 'QuotaExceededError');
    expect(failureOf(Object.assign(new Error('aborted'), { inner: quota })).reason).toBe('storage-full');
    expect(failureOf(new Error('outer', { cause: new Error('middle', { cause: quota }) })).reason).toBe('storage-full');
    expect(failureOf(Object.assign(new Error('bulk'), { failures: [quota] })).reason).toBe('storage-full');
  });

  it('gives the words of what it does not know, and never fails itself', () => {
    expect(failureOf(new Error('disk on fire'))).toEqual({ written: false, reason: 'failed', message: 'disk on fire' });
    expect(failureOf('thrown text')).toEqual({ written: false, reason: 'failed', message: 'thrown text' });
    expect(failureOf(undefined).reason).toBe('failed');
    const loop = new Error('loop');
    Object.assign(loop, { cause: loop });
    expect(failureOf(loop).message).toBe('loop');
  });
});

describe('openRecords', () => {
  it('refuses records of a newer version and leaves them as they are', async () => {
    const name = newId();
    const newer = new Dexie(name);
    newer.version(SCHEMA_VERSION + 1).stores({ instruments: 'id', novelties: 'id' });
    await newer.open();
    await newer.table('instruments').put(instrument);
    newer.close();
    const refusal = await openRecords(name).catch((error: unknown) => error);
    expect(refusal).toBeInstanceOf(RecordsUnavailableError);
    expect(refusal).toMatchObject({ reason: 'newer-version' });
    await newer.open();
    expect(await newer.table('instruments').toArray()).toEqual([instrument]);
    newer.close();
  });

  it('says so where the browser has no database', async () => {
    const { indexedDB } = Dexie.dependencies;
    Reflect.deleteProperty(Dexie.dependencies, 'indexedDB');
    const refusal = await openRecords(newId()).catch((error: unknown) => error);
    Dexie.dependencies.indexedDB = indexedDB;
    expect(refusal).toMatchObject({ name: 'RecordsUnavailableError', reason: 'no-database' });
  });
});

describe('a damaged row', () => {
  it('does not hide the sound ones, is named, and stays in the database', async () => {
    const name = newId();
    const records = await freshRecords(name);
    const [sound, other] = [exampleTake(survey), exampleTake(survey, { midi: 70 })];
    await records.keepTake(sound);
    await records.keepTake(other);
    const raw = createDatabase(name);
    const row = await raw.takes.get(other.id);
    await raw.table('takes').put({ ...row, partials: { ...row?.partials, components: new Float64Array(3) } });
    expect(records.damagedRows()).toEqual([]);
    expect(await records.takesOfSurvey(survey.id)).toEqual([sound]);
    expect(records.damagedRows()).toMatchObject([{ table: 'takes', id: other.id }]);
    expect(records.damagedRows()[0]?.fault).toMatch(/partials: components has 3 numbers/);
    expect(await raw.takes.count()).toBe(2);
    raw.close();
  });
});
