/** Meets some rows of an archive with the database's own, in one transaction: all of it or nothing. */

import { Dexie } from 'dexie';
import type { LeftOut } from '../files/archive/archiveContents.ts';
import { mergeTables, type RecordTables } from '../files/merge/recordTables.ts';
import { areSame, type RowVersion } from '../files/merge/rowVersion.ts';
import type { PhotographId, TakeId } from '../piano/ids.ts';
import type { RecordsDatabase } from './database.ts';
import { MERGED_TABLES, ownTables } from './ownTables.ts';
import { checkRow, type TableName } from './rowSchemas.ts';
import type { GoneRow, RivalRow } from './rows.ts';
import { isDeleted } from './soundRows.ts';
import { NotARecordError } from './writeOutcome.ts';

export type MergeCounts = {
  readonly newRows: number;
  readonly changedRows: number;
  /** Deleted there, and now here. */
  readonly deletedRows: number;
  /** Changed on both sides apart: both versions stay until somebody chooses. */
  readonly rivals: number;
};

export const NO_COUNTS: MergeCounts = { newRows: 0, changedRows: 0, deletedRows: 0, rivals: 0 };

export type GroupOptions = { readonly now: string; readonly leftOut: readonly LeftOut[]; readonly isDryRun: boolean };

const TABLES = [...MERGED_TABLES, 'sounds', 'photographFiles', 'rivals', 'gone'] as const;

/**
 * Takes that are new to their instrument are believed to be new altogether; where one is not, everything is looked up and done again.
 * Looking for each of them beforehand is a request to the database for each, which for nearly all of them finds nothing.
 */
export async function mergeGroup(
  database: RecordsDatabase,
  theirs: RecordTables,
  options: GroupOptions,
): Promise<MergeCounts> {
  try {
    return await mergeOnce(database, theirs, { ...options, looksEverywhere: options.isDryRun });
  } catch (fault) {
    if (!isOfTakenId(fault)) throw fault;
    return mergeOnce(database, theirs, { ...options, looksEverywhere: true });
  }
}

type OnceOptions = GroupOptions & { readonly looksEverywhere: boolean };

function mergeOnce(
  database: RecordsDatabase,
  theirs: RecordTables,
  { now, leftOut, isDryRun, looksEverywhere }: OnceOptions,
): PromiseLike<MergeCounts> {
  return database.transaction(isDryRun ? 'r' : 'rw', [...TABLES], async () => {
    const ours = await ownTables(database, theirs, looksEverywhere);
    const merged = mergeTables(ours, theirs, { now, leftOut });
    const changes = changesOf(ours, merged);
    if (!isDryRun) await write(database, changes, ours);
    return countsOf(ours, changes);
  });
}

/** A row was to be added under an id that another one has. */
function isOfTakenId(fault: unknown): boolean {
  const failures = fault instanceof Dexie.BulkError ? fault.failures : [];
  return failures.some((failure) => failure.name === 'ConstraintError');
}

type Changes = {
  readonly rows: ReadonlyMap<string, readonly RowVersion[]>;
  /** Rows that are gone for good now. */
  readonly removed: ReadonlyMap<string, readonly string[]>;
  readonly rivals: readonly RivalRow[];
  readonly settledRivals: readonly string[];
  readonly gone: readonly GoneRow[];
};

function changesOf(ours: RecordTables, merged: RecordTables): Changes {
  const rows = new Map<string, RowVersion[]>();
  const removed = new Map<string, string[]>();
  for (const table of MERGED_TABLES) {
    const before = new Map((ours.rows[table] ?? []).map((row) => [row.id, row]));
    const after = merged.rows[table] ?? [];
    const there = new Set(after.map(({ id }) => id));
    rows.set(
      table,
      after.filter((row) => !areSame(before.get(row.id), row)),
    );
    removed.set(
      table,
      [...before.keys()].filter((id) => !there.has(id)),
    );
  }
  const rivalIds = new Set(merged.rivals.map(({ id }) => id));
  const known = new Set(ours.rivals.map(({ id }) => id));
  return {
    rows,
    removed,
    rivals: merged.rivals.filter(({ id }) => !known.has(id)),
    settledRivals: [...known].filter((id) => !rivalIds.has(id)),
    gone: merged.gone.filter((mark) => !ours.gone.some((own) => areSame(own, mark))),
  };
}

async function write(database: RecordsDatabase, changes: Changes, ours: RecordTables): Promise<void> {
  for (const [table, rows] of changes.rows) {
    const there = new Set((ours.rows[table] ?? []).map(({ id }) => id));
    const sound = rows.map((row) => checked(table, row));
    const isNew = ({ id }: RowVersion) => !there.has(id);
    await database.table(table).bulkAdd(sound.filter(isNew));
    await database.table(table).bulkPut(sound.filter((row) => !isNew(row)));
  }
  for (const [table, ids] of changes.removed) {
    await database.table(table).bulkDelete([...ids]);
    if (table === 'takes') await database.sounds.bulkDelete(ids as TakeId[]);
    if (table === 'photographs') await database.photographFiles.bulkDelete(ids as PhotographId[]);
  }
  await database.rivals.bulkPut([...changes.rivals]);
  await database.rivals.bulkDelete([...changes.settledRivals]);
  await database.gone.bulkPut([...changes.gone]);
}

/** @throws {NotARecordError} which ends the transaction */
function checked(table: string, row: RowVersion): RowVersion {
  const check = checkRow(table as TableName, row);
  if (check.isSound) return row;
  throw new NotARecordError(`${table} ${row.id} in the archive is not a record. ${check.fault}`);
}

function countsOf(ours: RecordTables, { rows, removed, rivals }: Changes): MergeCounts {
  let [newRows, changedRows, deletedRows] = [0, 0, 0];
  for (const [table, list] of rows) {
    const before = new Map((ours.rows[table] ?? []).map((row) => [row.id, row]));
    for (const row of list) {
      const own = before.get(row.id);
      if (!own) newRows += 1;
      else if (isDeleted(row) && !isDeleted(own)) deletedRows += 1;
      else changedRows += 1;
    }
  }
  for (const ids of removed.values()) deletedRows += ids.length;
  return { newRows, changedRows, deletedRows, rivals: rivals.length };
}
