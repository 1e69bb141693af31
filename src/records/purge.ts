/**
 * Taking deleted rows away for good: after some time by themselves, or when somebody asks for the room. A short note of each stays
 * behind (`gone`), so that an archive from before does not bring it back.
 */
import type { PhotographId, TakeId } from '../piano/ids.ts';
import { countsByDeletion } from './bin.ts';
import type { RecordsDatabase } from './database.ts';
import {
  DELETABLE_TABLES,
  type Deletable,
  type DeletableRow,
  type DeletableTable,
  rootOf,
  rowsOf,
  tableOf,
} from './deletionTree.ts';
import type { GoneRow } from './rows.ts';
import { isDeleted } from './soundRows.ts';
import { outcomeOf, type WriteFailure } from './writeOutcome.ts';

/** How long a deletion can be undone. */
const DAYS_IN_BIN = 30;

export type PurgeOutcome = { readonly written: true; readonly rowCount: number } | WriteFailure;

const TABLES = [...DELETABLE_TABLES, 'sounds', 'photographFiles', 'rivals', 'gone'] as const;
/** So many rows are in memory at once. */
const CHUNK = 200;

/** Purges what has lain in the bin for longer than `DAYS_IN_BIN`. */
export async function purgeOld(database: RecordsDatabase, now: Date): Promise<PurgeOutcome> {
  const latest = new Date(now.getTime() - DAYS_IN_BIN * 86_400_000).toISOString();
  const old: string[] = [];
  for (const deletionId of (await countsByDeletion(database)).keys()) {
    const root = await rootOf(database, deletionId);
    if (root?.row.deletedAt !== undefined && root.row.deletedAt < latest) old.push(deletionId);
  }
  return purge(database, old);
}

/**
 * One transaction a deletion. A deletion on which something hangs that was not deleted itself stays where it is: a take that
 * another page wrote into the survey a moment later, or somebody else's work that a merge brought.
 */
export async function purge(database: RecordsDatabase, deletionIds: readonly string[]): Promise<PurgeOutcome> {
  let rowCount = 0;
  for (const deletionId of deletionIds) {
    const outcome = await outcomeOf(() => purgeOne(database, deletionId));
    if (!outcome.written) return outcome;
    rowCount += outcome.rowCount;
  }
  return { written: true, rowCount };
}

function purgeOne(database: RecordsDatabase, deletionId: string) {
  return database.transaction('rw', [...TABLES], async () => {
    let rowCount = 0;
    if (await holdsLivingRows(database, deletionId)) return { written: true as const, rowCount };
    for (const table of DELETABLE_TABLES)
      for (let rows = await next(database, table, deletionId); rows.length > 0; ) {
        await takeAway(database, table, rows);
        rowCount += rows.length;
        rows = await next(database, table, deletionId);
      }
    return { written: true as const, rowCount };
  });
}

async function holdsLivingRows(database: RecordsDatabase, deletionId: string): Promise<boolean> {
  const root = await rootOf(database, deletionId);
  if (!root) return false;
  for (const { rows } of await rowsOf(database, { table: root.table, id: root.row.id } as Deletable))
    if (await rows.filter((row) => !isDeleted(row)).first()) return true;
  return false;
}

function next(database: RecordsDatabase, table: DeletableTable, deletionId: string): PromiseLike<DeletableRow[]> {
  return tableOf(database, table).where({ deletionId }).limit(CHUNK).toArray();
}

async function takeAway(
  database: RecordsDatabase,
  table: DeletableTable,
  rows: readonly DeletableRow[],
): Promise<void> {
  const ids = rows.map((row) => row.id);
  await database.gone.bulkPut(rows.map((row) => goneRow(table, row)));
  await tableOf(database, table).bulkDelete(ids);
  if (table === 'takes') await database.sounds.bulkDelete(ids as TakeId[]);
  if (table === 'photographs') await database.photographFiles.bulkDelete(ids as PhotographId[]);
  if (table === 'instruments') await database.rivals.where('instrumentId').anyOf(ids).delete();
}

function goneRow(table: DeletableTable, row: DeletableRow): GoneRow {
  return {
    id: `${table}/${row.id}`,
    instrumentId: table === 'instruments' ? row.id : (row.instrumentId ?? null),
    table,
    rowId: row.id,
    stamp: row.stamp ?? {},
    deletedAt: row.deletedAt ?? '',
  };
}
