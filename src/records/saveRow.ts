/** Inserts or updates one row, checked before it goes in and stamped with the device that wrote it. */
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
    return database.transaction('rw', database.table(tableName), async () => {
      await putStamped(database, tableName, checked);
      return { written: true as const };
    });
  });
}

/** Puts a row as this device's newest edit of it; a row that was deleted meanwhile is there again. Inside a transaction. */
export async function putStamped<Name extends TableName>(
  database: RecordsDatabase,
  tableName: Name,
  row: RowOf[Name],
): Promise<void> {
  const table = database.table<RowOf[Name] & Stamped>(tableName);
  const before = await table.get(row.id);
  await table.put({ ...row, stamp: editedStamp(before?.stamp, database.deviceId) });
}
