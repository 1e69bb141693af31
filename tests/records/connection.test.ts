import 'fake-indexeddb/auto';
import { Dexie } from 'dexie';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { SCHEMA_VERSION } from '../../src/records/database.ts';
import { newId } from '../../src/records/newId.ts';
import { openRecords, type Records } from '../../src/records/records.ts';
import { exampleInstrument, exampleSurvey, exampleTake, exampleVisit } from './exampleRecords.ts';

let name: string;
let records: Records;
let newer: Dexie;

beforeEach(async () => {
  name = newId();
  records = await openRecords(name);
  newer = new Dexie(name);
  newer.on('blocked', () => false);
  newer.version(SCHEMA_VERSION + 1).stores({ instruments: 'id', takes: 'id', novelties: 'id' });
});
afterEach(() => {
  newer.close();
  records.close();
});

const take = exampleTake(exampleSurvey(exampleVisit(exampleInstrument())));

it('lets go for a newer version, says so, and writes nothing any more', async () => {
  let toldCount = 0;
  records.onClosed(() => {
    toldCount += 1;
  });
  await newer.open();
  expect(toldCount).toBe(1);
  expect(await records.keepTake(take)).toMatchObject({ written: false, reason: 'closed' });
  expect(await newer.table('takes').count()).toBe(0);
});

it('holds on while something is under way: every take is written before the newer version takes over', async () => {
  const release = records.holdOpen();
  let isTold = false;
  records.onClosed(() => {
    isTold = true;
  });
  const opened = newer.open();
  await new Promise((resolve) => setTimeout(resolve, 20));
  expect(await records.keepTake(take)).toMatchObject({ written: true });
  expect(isTold).toBe(false);
  release();
  await opened;
  expect(isTold).toBe(true);
  expect(await newer.table('takes').toArray()).toMatchObject([{ id: take.id }]);
});

it('tells the page that waits, and lets it in by itself', async () => {
  const stuckName = newId();
  const stuck = new Dexie(stuckName);
  stuck.on('versionchange', () => false);
  stuck.version(3).stores({ instruments: 'id' });
  await stuck.open();
  let blockedCount = 0;
  const opening = openRecords(stuckName, {
    onBlocked: () => {
      blockedCount += 1;
    },
  });
  await expect.poll(() => blockedCount).toBe(1);
  stuck.close();
  const late = await opening;
  expect(await late.listInstruments()).toEqual([]);
  late.close();
});
