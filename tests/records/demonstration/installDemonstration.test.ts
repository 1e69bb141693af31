import 'fake-indexeddb/auto';
import { expect, it } from 'vitest';
import { demonstrationRecords } from '../../../src/records/demonstration/demonstrationRecords.ts';
import { DEMONSTRATION_SEED, installDemonstration } from '../../../src/records/demonstration/installDemonstration.ts';
import { newId } from '../../../src/records/newId.ts';
import { openRecords } from '../../../src/records/records.ts';
import type { WriteOutcome } from '../../../src/records/writeOutcome.ts';

it('brings the whole workshop into the records', async () => {
  const records = await openRecords(newId());
  expect(await installDemonstration(records)).toEqual({ written: true });
  expect(await records.hasDemonstration()).toBe(true);
  const invented = demonstrationRecords(DEMONSTRATION_SEED);
  expect((await records.listInstruments()).map((row) => row.id).sort()).toEqual(
    invented.flatMap((set) => set.instruments.map((row) => row.id)).sort(),
  );
  const [garden] = invented.slice(-1);
  const stored = await records.readRecordSet(garden?.instruments[0]?.id);
  expect(stored.takes).toHaveLength(garden?.takes.length ?? 0);
  expect(stored.takes.find((take) => take.id === garden?.takes[0]?.id)).toStrictEqual(garden?.takes[0]);
  expect(stored.torques).toHaveLength(garden?.torques?.length ?? 0);
  const [, hall] = invented;
  expect((await records.readRecordSet(hall?.instruments[0]?.id)).schedules).toEqual(hall?.schedules);
  records.close();
});

const saveSound = async (): Promise<WriteOutcome> => ({ written: true });

it('tells how far it is', async () => {
  const shares: number[] = [];
  const writeRecordSet = async (): Promise<WriteOutcome> => ({ written: true });
  await installDemonstration({ writeRecordSet, saveSound }, (share) => shares.push(share));
  expect(shares).toEqual([0, 1 / 3, 2 / 3, 1]);
});

it('stops at the first write that fails and says why', async () => {
  const full: WriteOutcome = { written: false, reason: 'storage-full', message: 'no room' };
  let calls = 0;
  const writeRecordSet = async (): Promise<WriteOutcome> => {
    calls += 1;
    return calls < 2 ? { written: true } : full;
  };
  expect(await installDemonstration({ writeRecordSet, saveSound })).toEqual(full);
  expect(calls).toBe(2);
});
