import { describe, expect, it } from 'vitest';
import { openArchive } from '../../../src/files/archive/readArchive.ts';
import { writeArchive } from '../../../src/files/archive/writeArchive.ts';
import { bytesAsSource } from '../../../src/files/audio/byteSource.ts';
import {
  meetingFileName,
  type Published,
  parseMeetingFile,
  planMeeting,
  publish,
  unpublished,
} from '../../../src/files/merge/meetingFolder.ts';
import { mergeTables, NO_RECORDS, type RecordTables } from '../../../src/files/merge/recordTables.ts';
import { contentsOfTables, tablesOfArchive } from '../../../src/files/merge/tablesOfArchive.ts';
import { editedStamp } from '../../../src/piano/stamp.ts';
import { exampleInstrument, exampleSurvey, exampleTake, exampleVisit } from '../../records/exampleRecords.ts';
import { seededRandom } from '../../support/seededRandom.ts';
import { WRITTEN_AT } from '../archive/exampleArchive.ts';

describe('files of a meeting folder', () => {
  it('have the device and a number in their names', () => {
    expect(meetingFileName('tablet-1', 7)).toBe('tablet-1-000007.zip');
    expect(parseMeetingFile('tablet-1-000007.zip')).toEqual({
      name: 'tablet-1-000007.zip',
      deviceId: 'tablet-1',
      number: 7,
    });
    for (const other of [
      'tablet-1-7.zip',
      'tablet.zip',
      'a-000001.zip.part',
      'A-000001.zip',
      '../a-000001.zip',
      'a-000001 (1).zip',
    ])
      expect(parseMeetingFile(other)).toBeUndefined();
    expect(() => meetingFileName('a/b', 1)).toThrow(/deviceId/);
  });

  it('are read once, others’ only, and the own number never used twice, not even an interrupted one', () => {
    const names = ['b-000002.zip', 'a-000001.zip', 'b-000001.zip', 'a-000004.zip.part', 'notes.txt', 'c-000001.zip'];
    const plan = planMeeting(names, 'a', new Set(['c-000001.zip']));
    expect(plan.toRead.map(({ name }) => name)).toEqual(['b-000001.zip', 'b-000002.zip']);
    expect(plan.ownName).toBe('a-000005.zip');
    expect(planMeeting([], 'a', new Set()).ownName).toBe('a-000001.zip');
  });
});

type Device = { readonly id: string; records: RecordTables; readBefore: Set<string>; published: Published };

/** Files that were written, whole or cut short by a crash. */
type Folder = Map<string, Uint8Array>;

async function meet(device: Device, folder: Folder, crashesAfterShare: number | null): Promise<void> {
  const plan = planMeeting([...folder.keys()], device.id, device.readBefore);
  for (const { name } of plan.toRead) {
    const outcome = await openArchive(bytesAsSource(folder.get(name)!));
    if (!outcome.opened) continue;
    const theirs = await tablesOfArchive(outcome.archive);
    device.records = mergeTables(device.records, theirs, { now: '2026-01-01T00:00:00Z' });
    device.published = publish(device.published, theirs);
    device.readBefore.add(name);
  }
  const news = unpublished(device.records, device.published);
  if (Object.values(news.rows).every((list) => list.length === 0) && news.rivals.length + news.gone.length === 0)
    return;
  const bytes = await bytesOf(news);
  if (crashesAfterShare !== null) {
    folder.set(plan.ownName, bytes.slice(0, Math.floor(bytes.length * crashesAfterShare)));
    return;
  }
  folder.set(plan.ownName, bytes);
  device.published = publish(device.published, news);
}

async function bytesOf(records: RecordTables): Promise<Uint8Array> {
  const pieces: Uint8Array<ArrayBuffer>[] = [];
  await writeArchive(contentsOfTables(records), WRITTEN_AT, (bytes) => void pieces.push(bytes.slice()));
  return new Uint8Array(await new Blob(pieces).arrayBuffer());
}

/** Adds a visit with a take, or edits a row that is there. */
function work(device: Device, random: () => number): void {
  const { rows } = device.records;
  const all = Object.entries(rows).flatMap(([table, list]) => list.map((row) => ({ table, row })));
  const stamped = <Row extends { id: string }>(row: Row) => ({ ...row, stamp: editedStamp(undefined, device.id) });
  const instrument = rows.instruments?.[0];
  if (instrument !== undefined && random() < 0.6) {
    const { table, row } = all[Math.floor(random() * all.length)]!;
    const edited = { ...row, remark: `edit ${random()}`, stamp: editedStamp(row.stamp, device.id) };
    device.records = {
      ...device.records,
      rows: { ...rows, [table]: rows[table]!.map((one) => (one === row ? edited : one)) },
    };
    return;
  }
  const piano = stamped(exampleInstrument());
  const visit = stamped(exampleVisit(piano));
  const survey = stamped(exampleSurvey(visit));
  const add = { instruments: piano, visits: visit, surveys: survey, takes: stamped(exampleTake(survey)) };
  const more = Object.entries(add).map(([table, row]) => [table, [...(rows[table] ?? []), row]]);
  device.records = { ...device.records, rows: { ...rows, ...Object.fromEntries(more) } };
}

it.each([1, 2, 3])(
  'devices that meet in a folder end with the same records, whatever crashes (seed %i)',
  async (seed) => {
    const { uniform } = seededRandom(seed);
    const folder: Folder = new Map();
    const devices = ['tablet', 'desk', 'phone'].map(
      (id): Device => ({ id, records: NO_RECORDS, readBefore: new Set(), published: new Map() }),
    );
    for (let step = 0; step < 20; step++) {
      const device = devices[Math.floor(uniform() * devices.length)]!;
      if (uniform() < 0.6) work(device, uniform);
      else await meet(device, folder, uniform() < 0.3 ? uniform() : null);
    }
    const before = new Map([...folder].map(([name, bytes]) => [name, bytes.slice()]));
    for (let round = 0; round < 3; round++) for (const device of devices) await meet(device, folder, null);
    for (const [name, bytes] of before) expect(folder.get(name)).toEqual(bytes);
    const [first, ...others] = devices.map(({ records }) => inOrder(records));
    for (const other of others) expect(other).toEqual(first);
    const fileCount = folder.size;
    for (const device of devices) await meet(device, folder, null);
    expect(folder.size).toBe(fileCount);
  },
);

function inOrder({ rows, rivals, gone }: RecordTables) {
  const byId = (one: { id: string }, other: { id: string }) => (one.id < other.id ? -1 : 1);
  const sorted = Object.entries(rows).map(([table, list]) => [table, [...list].sort(byId)] as const);
  return { rows: Object.fromEntries(sorted.sort()), rivals: [...rivals].sort(byId), gone };
}
