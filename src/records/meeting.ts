/**
 * Meets other devices in a shared folder (files/merge/meetingFolder.ts): reads what they added since the last time, and adds a file
 * with what this device knows and the folder does not. No file is ever changed, so two devices may meet at the same time.
 */
import type { ArchiveContents } from '../files/archive/archiveContents.ts';
import { ArchiveFault, type StopSignal } from '../files/archive/archiveFault.ts';
import { openArchive } from '../files/archive/readArchive.ts';
import { writeArchive } from '../files/archive/writeArchive.ts';
import type { ByteSource } from '../files/audio/byteSource.ts';
import { type Published, planMeeting, publish, unpublished } from '../files/merge/meetingFolder.ts';
import type { RecordTables } from '../files/merge/recordTables.ts';
import { rowKey } from '../files/merge/rowKeys.ts';
import type { RowVersion } from '../files/merge/rowVersion.ts';
import { contentsOfTables, MERGED_KINDS, tablesOfArchive } from '../files/merge/tablesOfArchive.ts';
import type { PhotographId, TakeId } from '../piano/ids.ts';
import { compareStamps, type Stamp } from '../piano/stamp.ts';
import { archiveSource } from './archiveSource.ts';
import type { RecordsDatabase } from './database.ts';
import { mergeArchive } from './mergeArchive.ts';
import { rowToSound } from './rows.ts';

/** A folder that other devices see as well. */
export type MeetingPlace = {
  readonly names: () => Promise<string[]>;
  readonly open: (name: string) => Promise<ByteSource>;
  /** A new file; it appears under its name only once it is whole. */
  readonly create: (name: string) => Promise<{
    readonly write: (bytes: Uint8Array) => Promise<void>;
    readonly finish: () => Promise<void>;
    readonly discard: () => Promise<void>;
  }>;
};

export type MeetingOptions = {
  /** ISO 8601 date and time. */
  readonly now: string;
  readonly programVersion: string;
  readonly signal?: StopSignal;
};

export type MeetingReport = {
  /** Files of others that were read for the first time. */
  readonly readCount: number;
  /** Rows that came in, changed or went. */
  readonly changedCount: number;
  readonly rivalCount: number;
  /** Files that are not whole: still on their way, perhaps. They are tried again the next time. */
  readonly unreadable: readonly string[];
  /** What this device added; null where the folder knew all of it. */
  readonly addedName: string | null;
};

const MEMORY = 'meeting.memory';
type Memory = { readonly read: readonly string[]; readonly published: Published };

/** @throws whatever the folder throws; what was merged until then stays merged */
export async function meet(
  database: RecordsDatabase,
  place: MeetingPlace,
  options: MeetingOptions,
): Promise<MeetingReport> {
  const memory = await remembered(database);
  const plan = planMeeting(await place.names(), database.deviceId, new Set(memory.read));
  const read = [...memory.read];
  const unreadable: string[] = [];
  let published = memory.published;
  let [changedCount, rivalCount] = [0, 0];
  for (const { name } of plan.toRead) {
    const came = await readOne(database, await place.open(name), options.signal);
    if (!came) unreadable.push(name);
    else {
      changedCount += came.changedCount;
      rivalCount += came.rivalCount;
      published = publish(published, came.tables);
      read.push(name);
      await database.settings.put({ key: MEMORY, value: { read, published } satisfies Memory });
    }
  }
  const own = await addOwn(database, place, { name: plan.ownName, published, options });
  await database.settings.put({ key: MEMORY, value: { read, published: own.published } satisfies Memory });
  const addedName = own.isAdded ? plan.ownName : null;
  return { readCount: read.length - memory.read.length, changedCount, rivalCount, unreadable, addedName };
}

/** Another folder is another meeting: nothing is known of what it holds. */
export async function forgetMeeting(database: RecordsDatabase): Promise<void> {
  await database.settings.delete(MEMORY);
}

async function remembered(database: RecordsDatabase): Promise<Memory> {
  const value = (await database.settings.get(MEMORY))?.value as Partial<Memory> | undefined;
  return { read: value?.read ?? [], published: value?.published ?? new Map() };
}

async function readOne(database: RecordsDatabase, source: ByteSource, signal: StopSignal | undefined) {
  try {
    const outcome = await openArchive(source);
    if (!outcome.opened) return null;
    const wish = signal ? { signal } : {};
    const tables = await tablesOfArchive(outcome.archive, wish);
    const { instruments } = await mergeArchive(database, outcome.archive, wish);
    const sum = (count: (row: (typeof instruments)[number]) => number) =>
      instruments.reduce((all, row) => all + count(row), 0);
    const changedCount = sum((row) => row.newRows + row.changedRows + row.deletedRows);
    return { tables, changedCount, rivalCount: sum((row) => row.rivals) };
  } catch (fault) {
    if (fault instanceof ArchiveFault && fault.reason !== 'cancelled') return null;
    throw fault;
  }
}

type Own = { readonly name: string; readonly published: Published; readonly options: MeetingOptions };

async function addOwn(
  database: RecordsDatabase,
  place: MeetingPlace,
  { name, published, options }: Own,
): Promise<{ readonly isAdded: boolean; readonly published: Published }> {
  const fresh = unpublished(await ownTables(database, published), published);
  const isEmpty = Object.values(fresh.rows).every((list) => list.length === 0);
  if (isEmpty && fresh.rivals.length === 0 && fresh.gone.length === 0) return { isAdded: false, published };
  const file = await place.create(name);
  try {
    const { now, programVersion, signal } = options;
    const facts = { createdAt: now, programVersion, ...(signal && { signal }) };
    await writeArchive(withFiles(database, fresh), facts, file.write);
    await file.finish();
  } catch (fault) {
    await file.discard();
    throw fault;
  }
  return { isAdded: true, published: publish(published, fresh) };
}

/** Takes that the folder has are left out already here: they are most of all rows. The demonstration stays at home. */
async function ownTables(database: RecordsDatabase, published: Published): Promise<RecordTables> {
  const contents = await archiveSource(database, null);
  const invented = new Set<string>(await database.instruments.filter((row) => row.isDemonstration).primaryKeys());
  const rows: Record<string, RowVersion[]> = {};
  for (const kind of MERGED_KINDS) {
    const list: RowVersion[] = [];
    const source = kind === 'takes' ? contents.takes?.() : contents[kind];
    for await (const row of source ?? [])
      if (!isOf(invented, row) && (kind !== 'takes' || isFresh(published, row))) list.push(row);
    rows[kind] = list;
  }
  return { rows, rivals: await all(contents.rivals), gone: await all(contents.gone) };
}

function isOf(instrumentIds: ReadonlySet<string>, row: RowVersion): boolean {
  const { instrumentId } = row as { instrumentId?: unknown };
  return instrumentIds.has(row.id) || (typeof instrumentId === 'string' && instrumentIds.has(instrumentId));
}

function isFresh(published: Published, row: RowVersion): boolean {
  const isKnown = (stamp: Stamp) => ['same', 'older'].includes(compareStamps(row.stamp, stamp));
  return !(published.get(rowKey('takes', row.id)) ?? []).some(isKnown);
}

async function all<Row>(source: Iterable<Row> | AsyncIterable<Row> | undefined): Promise<Row[]> {
  const rows: Row[] = [];
  for await (const row of source ?? []) rows.push(row);
  return rows;
}

/** The sounds of the takes and the pictures of the photographs that go along. */
function withFiles(database: RecordsDatabase, tables: RecordTables): ArchiveContents {
  async function* sounds() {
    for (const { id } of tables.rows.takes ?? []) {
      const row = await database.sounds.get(id as TakeId);
      if (row) yield rowToSound(row);
    }
  }
  async function* photographFiles() {
    for (const { id } of tables.rows.photographs ?? []) {
      const file = await database.photographFiles.get(id as PhotographId);
      if (file) yield file;
    }
  }
  return { ...contentsOfTables(tables), sounds: sounds(), photographFiles: photographFiles() };
}
