import 'fake-indexeddb/auto';
import { expect, it } from 'vitest';
import { demonstrationRecords } from '../../../src/records/demonstration/demonstrationRecords.ts';
import { DEMONSTRATION_SEED, installDemonstration } from '../../../src/records/demonstration/installDemonstration.ts';
import { inventedSounds } from '../../../src/records/demonstration/inventedSounds.ts';
import { DEMONSTRATION_BEGUN } from '../../../src/records/demonstrationRows.ts';
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

it('is completed by installing it again after an interruption, and changes nothing of what is there', async () => {
  const records = await openRecords(newId());
  const full: WriteOutcome = { written: false, reason: 'storage-full', message: 'no room' };
  let soundCount = 0;
  const saveSound: typeof records.saveSound = async (sound) => {
    soundCount += 1;
    return soundCount <= 2 ? records.saveSound(sound) : full;
  };
  expect(await installDemonstration({ ...records, saveSound })).toEqual(full);
  const [first, ...others] = await records.listInstruments();
  expect(others).toEqual([]);
  expect(await records.setting(DEMONSTRATION_BEGUN)).toBe(true);
  await records.saveInstrument({ ...first!, remark: 'looked at' });
  expect(await installDemonstration(records)).toEqual({ written: true });
  const invented = demonstrationRecords(DEMONSTRATION_SEED);
  expect(await records.listInstruments()).toHaveLength(invented.length);
  expect((await records.instrument(first!.id))?.remark).toBe('looked at');
  const { takeIds } = await records.soundSizes();
  expect(takeIds.length).toBe(invented.flatMap((set) => [...inventedSounds(set)]).length);
  expect(await records.setting(DEMONSTRATION_BEGUN)).toBeNull();
  records.close();
});

const written: WriteOutcome = { written: true };
const place = {
  instrument: async () => undefined,
  sound: async () => undefined,
  saveSound: async () => written,
  saveSetting: async () => written,
};

it('tells how far it is', async () => {
  const shares: number[] = [];
  await installDemonstration({ ...place, writeRecordSet: async () => written }, (share) => shares.push(share));
  expect(shares).toEqual([0, 1 / 3, 2 / 3, 1]);
});

it('stops at the first write that fails and says why', async () => {
  const full: WriteOutcome = { written: false, reason: 'storage-full', message: 'no room' };
  let calls = 0;
  const writeRecordSet = async (): Promise<WriteOutcome> => {
    calls += 1;
    return calls < 2 ? written : full;
  };
  expect(await installDemonstration({ ...place, writeRecordSet })).toEqual(full);
  expect(calls).toBe(2);
});
