/** Inserts or updates one row, checked before it goes in and stamped with the device that wrote it. */
import { editedRow } from '../files/merge/editRow.ts';
import { rivalRow } from '../files/merge/recordTables.ts';
import { rowKey } from '../files/merge/rowKeys.ts';
import type { RowVersion } from '../files/merge/rowVersion.ts';
import { editedStamp, type Stamped } from '../piano/stamp.ts';
import type { RecordsDatabase } from './database.ts';
import { type RowOf, soundRow, type TableName } from './rowSchemas.ts';
import { outcomeOf, type WriteOutcome } from './writeOutcome.ts';

export function saveRow<Name extends TableName>(
  database: RecordsDatabase,
  tableName: Name,
  row: RowOf[Name],
): Promise<WriteOutcome> {
  return outcomeOf(async () => {
    const checked = soundRow(tableName, row);
    return database.transaction('rw', editTables(tableName), async () => {
      await putStamped(database, tableName, checked);
      return { written: true as const };
    });
  });
}

/** The tables that an edit of these reads and writes. */
export function editTables(...names: readonly TableName[]): string[] {
  return [...names, 'rivals', 'gone'];
}

/**
 * Puts a row as this device's newest edit of it; a row that was deleted meanwhile is there again. Inside a transaction over
 * `editTables`.
 */
export async function putStamped<Name extends TableName>(
  database: RecordsDatabase,
  tableName: Name,
  row: RowOf[Name],
): Promise<void> {
  const before = await database.table<RowOf[Name] & Stamped>(tableName).get(row.id);
  await putEdited(database, tableName, before, row);
}

/**
 * Versions of the row that were edited apart stay rivals, and an edit does not cover them unseen (merge/editRow.ts).
 * @param before as it is stored; undefined for a new row
 */
export async function putEdited(
  database: RecordsDatabase,
  tableName: string,
  before: RowVersion | undefined,
  row: RowVersion,
): Promise<void> {
  const key = rowKey(tableName, row.id);
  const rivals = await database.rivals.where('id').startsWith(`${key}/`).toArray();
  const gone = await database.gone.where('id').between(key, `${key}/\uffff`, true, true).toArray();
  const table = database.table<RowVersion>(tableName);
  if (rivals.length === 0 && gone.length === 0) {
    await table.put({ ...row, stamp: editedStamp(before?.stamp, database.deviceId) });
    return;
  }
  const versions = [...(before ? [before] : []), ...rivals.map((rival) => rival.row as RowVersion)];
  const known = { versions, gone: gone.map(({ stamp }) => stamp) };
  const [shown, ...others] = editedRow(known, row, database.deviceId).versions;
  if (!shown) throw new TypeError('an edited row has no version');
  await table.put(shown);
  await database.rivals.bulkDelete(rivals.map(({ id }) => id));
  const foundAt = rivals.map((rival) => rival.foundAt).sort()[0] ?? '';
  await database.rivals.bulkPut(others.map((other) => rivalRow(tableName, other, () => foundAt)));
}
