/** Meets some rows of an archive with the database's own, in one transaction: all of it or nothing. */

import type { LeftOut } from '../files/archive/archiveContents.ts';
import { mergeTables, type RecordTables } from '../files/merge/recordTables.ts';
import { areSame, type RowVersion } from '../files/merge/rowVersion.ts';
import type { PhotographId, SurveyId, TakeId } from '../piano/ids.ts';
import type { RecordsDatabase } from './database.ts';
import { DELETABLE_TABLES } from './deletionTree.ts';
import { checkRow, type TableName } from './rowSchemas.ts';
import type { GoneRow, RivalRow } from './rows.ts';
import { isDeleted } from './soundRows.ts';
import { rowsOfSurvey } from './takeReads.ts';
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

const MERGED_TABLES = [...DELETABLE_TABLES, 'calibrations'] as const;
const TABLES = [...MERGED_TABLES, 'sounds', 'photographFiles', 'rivals', 'gone'] as const;

export function mergeGroup(
  database: RecordsDatabase,
  theirs: RecordTables,
  { now, leftOut, isDryRun }: GroupOptions,
): PromiseLike<MergeCounts> {
  return database.transaction(isDryRun ? 'r' : 'rw', [...TABLES], async () => {
    const ours = await ownTables(database, theirs);
    const merged = mergeTables(ours, theirs, { now, leftOut });
    const changes = changesOf(ours, merged);
    if (!isDryRun) await write(database, changes);
    return countsOf(ours, changes);
  });
}

/** What the database knows of the rows that the other side has, and of takes that share a survey with them. */
async function ownTables(database: RecordsDatabase, theirs: RecordTables): Promise<RecordTables> {
  const wanted = new Map<string, Set<string>>();
  const want = (table: string, id: string) => wanted.set(table, (wanted.get(table) ?? new Set()).add(id));
  for (const [table, list] of Object.entries(theirs.rows)) for (const { id } of list) want(table, id);
  for (const { table, rowId } of [...theirs.rivals, ...theirs.gone]) want(table, rowId);
  const rows: Record<string, readonly RowVersion[]> = {};
  for (const [table, ids] of wanted) if (isMerged(table)) rows[table] = await existing(database, table, [...ids]);
  const takes = await takesBeside(database, theirs);
  if (takes.length > 0) rows.takes = distinctById([...(rows.takes ?? []), ...takes]);
  const keys = new Set(Object.entries(rows).flatMap(([table, list]) => list.map(({ id }) => `${table}/${id}`)));
  for (const [table, ids] of wanted) for (const id of ids) keys.add(`${table}/${id}`);
  return { rows, rivals: await rivalsOf(database, keys), gone: await goneOf(database, keys) };
}

async function existing(database: RecordsDatabase, table: string, ids: readonly string[]): Promise<RowVersion[]> {
  const found = await database.table<RowVersion, string>(table).bulkGet([...ids]);
  return found.filter((row) => row !== undefined);
}

async function takesBeside(database: RecordsDatabase, { rows }: RecordTables): Promise<RowVersion[]> {
  const surveyIds = new Set((rows.takes ?? []).map((row) => (row as unknown as { surveyId: SurveyId }).surveyId));
  const lists = await Promise.all([...surveyIds].map((surveyId) => rowsOfSurvey(database, surveyId).toArray()));
  return lists.flat();
}

function distinctById(rows: readonly RowVersion[]): RowVersion[] {
  return [...new Map(rows.map((row) => [row.id, row])).values()];
}

/** Few rows have any: reading all is less than asking for each. */
async function rivalsOf(database: RecordsDatabase, keys: ReadonlySet<string>): Promise<RivalRow[]> {
  if ((await database.rivals.count()) === 0) return [];
  return database.rivals.filter(({ table, rowId }) => keys.has(`${table}/${rowId}`)).toArray();
}

async function goneOf(database: RecordsDatabase, keys: ReadonlySet<string>): Promise<GoneRow[]> {
  if ((await database.gone.count()) === 0) return [];
  return database.gone.filter(({ table, rowId }) => keys.has(`${table}/${rowId}`)).toArray();
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

async function write(database: RecordsDatabase, changes: Changes): Promise<void> {
  for (const [table, rows] of changes.rows)
    if (rows.length > 0) await database.table(table).bulkPut(rows.map((row) => checked(table, row)));
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

function isMerged(table: string): boolean {
  return MERGED_TABLES.some((known) => known === table);
}
