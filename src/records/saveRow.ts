/** Inserts or updates one row, checked before it goes in. */
import type { RowOf, TableName } from './rowSchemas.ts';
import { soundRow } from './rowSchemas.ts';
import { outcomeOf, type WriteOutcome } from './writeOutcome.ts';

/** Whatever can put a row: a Dexie table, seen from here. */
type Putter<Row> = { put(row: Row): PromiseLike<unknown> };

export function saveRow<Name extends TableName>(
  table: Putter<RowOf[Name]>,
  tableName: Name,
  row: RowOf[Name],
): Promise<WriteOutcome> {
  return outcomeOf(async () => {
    await table.put(soundRow(tableName, row));
    return { written: true };
  });
}
