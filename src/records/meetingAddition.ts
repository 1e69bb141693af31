/** What this device adds to a shared folder: a file with what it knows and the folder does not. */
import type { ArchiveContents } from '../files/archive/archiveContents.ts';
import { writeArchive } from '../files/archive/writeArchive.ts';
import { type Published, publish, unpublished } from '../files/merge/meetingFolder.ts';
import type { RecordTables } from '../files/merge/recordTables.ts';
import { rowKey } from '../files/merge/rowKeys.ts';
import type { RowVersion } from '../files/merge/rowVersion.ts';
import { contentsOfTables, MERGED_KINDS } from '../files/merge/tablesOfArchive.ts';
import type { PhotographId, TakeId } from '../piano/ids.ts';
import { compareStamps, type Stamp } from '../piano/stamp.ts';
import { archiveSource } from './archiveSource.ts';
import type { RecordsDatabase } from './database.ts';
import type { MeetingOptions, MeetingPlace } from './meetingPlace.ts';
import { rowToSound } from './rows.ts';

type Own = { readonly name: string; readonly published: Published; readonly options: MeetingOptions };

export async function addOwn(
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
