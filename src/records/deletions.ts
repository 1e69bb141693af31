/**
 * Deleting that can be undone. A deletion marks a row and all that hangs on it, in one transaction and as an edit of each, so that
 * it travels with an archive; no read gives marked rows any more. Restoring takes the marks away.
 */
import type { Collection } from 'dexie';
import type { SurveyId } from '../piano/ids.ts';
import { editedStamp } from '../piano/stamp.ts';
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
import { uuidFromBytes } from './newId.ts';
import type { TakeRow } from './rows.ts';
import { editTables, putEdited, putStamped } from './saveRow.ts';
import { isDeleted } from './soundRows.ts';
import { rowsOfSurvey } from './takeReads.ts';
import { otherKeptRow, type TakeSlot } from './takeWrites.ts';
import { NotARecordError, outcomeOf, type WriteFailure } from './writeOutcome.ts';

export type DeleteOutcome =
  /** One deletion for each row named, in the same order; each can be undone by itself. */
  { readonly written: true; readonly deletionIds: readonly string[]; readonly rowCount: number } | WriteFailure;

export type RestoreOutcome = { readonly written: true; readonly rowCount: number } | WriteFailure;

/** One transaction a row named: where one fails, those before it stay deleted and the failure is told. */
export async function deleteRows(
  database: RecordsDatabase,
  targets: readonly Deletable[],
  deletedAt: string,
): Promise<DeleteOutcome> {
  const deletionIds: string[] = [];
  let rowCount = 0;
  for (const target of targets) {
    const outcome = await deleteOne(database, target, deletedAt);
    if (!outcome.written) return outcome;
    deletionIds.push(outcome.deletionId);
    rowCount += outcome.rowCount;
  }
  return { written: true, deletionIds, rowCount };
}

function deleteOne(database: RecordsDatabase, target: Deletable, deletedAt: string) {
  const deletionId = uuidFromBytes(crypto.getRandomValues(new Uint8Array(16)));
  const mark = (row: DeletableRow): DeletableRow => ({ ...row, deletedAt, deletionId });
  return outcomeOf(() =>
    database.transaction('rw', editTables(...DELETABLE_TABLES), async () => {
      const row = await tableOf(database, target.table).get(target.id);
      if (!row || isDeleted(row)) throw new NotARecordError(`there is no ${target.table} ${target.id} to delete`);
      let rowCount = 0;
      for (const { table, rows } of await rowsOf(database, target))
        rowCount += await editAll(
          database,
          table,
          rows.filter((found) => !isDeleted(found)),
          mark,
        );
      return { written: true as const, deletionId, rowCount };
    }),
  );
}

/**
 * Brings deletions back. What was deleted with something that lies in the bin as well (a survey, and later its visit) brings that
 * back too, since it could not be seen otherwise.
 */
export async function restore(database: RecordsDatabase, deletionIds: readonly string[]): Promise<RestoreOutcome> {
  let rowCount = 0;
  for (const deletionId of deletionIds) {
    const outcome = await restoreOne(database, deletionId);
    if (!outcome.written) return outcome;
    rowCount += outcome.rowCount;
  }
  return { written: true, rowCount };
}

function restoreOne(database: RecordsDatabase, deletionId: string): Promise<RestoreOutcome> {
  return outcomeOf(() =>
    database.transaction('rw', editTables(...DELETABLE_TABLES), async () => {
      let rowCount = 0;
      for (const id of [...(await holdersOf(database, deletionId)), deletionId])
        rowCount += await unmarkAll(database, id);
      return { written: true as const, rowCount };
    }),
  );
}

async function unmarkAll(database: RecordsDatabase, deletionId: string): Promise<number> {
  let rowCount = 0;
  const takes = new Map<SurveyId, TakeSlot[]>();
  for (const table of DELETABLE_TABLES)
    rowCount += await editAll(database, table, tableOf(database, table).where({ deletionId }), (row) => {
      if (table === 'takes') gather(takes, row as unknown as TakeRow);
      return unmarked(row);
    });
  for (const [surveyId, restored] of takes) await setDoublesAside(database, surveyId, restored);
  return rowCount;
}

function unmarked(row: DeletableRow): DeletableRow {
  const { deletedAt: _deletedAt, deletionId: _deletionId, ...rest } = row;
  return rest;
}

/** Edits many rows, few of which have rivals; gives their number. */
async function editAll(
  database: RecordsDatabase,
  table: DeletableTable,
  rows: Collection<DeletableRow, string>,
  edit: (row: DeletableRow) => DeletableRow,
): Promise<number> {
  const rivals = await database.rivals.where('id').startsWith(`${table}/`).toArray();
  const contested = new Set(rivals.map(({ rowId }) => rowId));
  const apart: DeletableRow[] = [];
  const count = await rows.modify((row, change) => {
    if (contested.has(row.id)) apart.push(row);
    else change.value = { ...edit(row), stamp: editedStamp(row.stamp, database.deviceId) };
  });
  for (const row of apart) await putEdited(database, table, row, edit(row));
  return count;
}

/** Without its figures, so that a whole instrument's takes need no room in memory. */
function gather(takes: Map<SurveyId, TakeSlot[]>, { id, surveyId, midi, stringPosition, keptFlag }: TakeRow): void {
  const ofSurvey = takes.get(surveyId) ?? [];
  takes.set(surveyId, [...ofSurvey, { id, surveyId, midi, stringPosition, keptFlag }]);
}

/** Where another take got the place of a deleted one meanwhile, the other keeps it. */
async function setDoublesAside(
  database: RecordsDatabase,
  surveyId: SurveyId,
  restored: readonly TakeSlot[],
): Promise<void> {
  if ((await rowsOfSurvey(database, surveyId).count()) === restored.length) return;
  for (const slot of restored) {
    if (slot.keptFlag === 0 || !(await otherKeptRow(database, slot))) continue;
    const row = await database.takes.get(slot.id);
    if (row) await putStamped(database, 'takes', { ...row, keptFlag: 0 });
  }
}

/** The deletions of what holds a deletion's rows, from the innermost out. */
async function holdersOf(database: RecordsDatabase, deletionId: string): Promise<string[]> {
  const root = await rootOf(database, deletionId);
  if (!root) return [];
  const { surveyId, visitId, instrumentId } = root.row as {
    surveyId?: string;
    visitId?: string;
    instrumentId?: string;
  };
  const holders = [
    surveyId === undefined ? undefined : await tableOf(database, 'surveys').get(surveyId),
    visitId === undefined || visitId === null ? undefined : await tableOf(database, 'visits').get(visitId),
    instrumentId === undefined ? undefined : await tableOf(database, 'instruments').get(instrumentId),
  ];
  const ids = holders.flatMap((row) => (row?.deletionId === undefined ? [] : [row.deletionId]));
  return [...new Set(ids)].filter((id) => id !== deletionId);
}
