/** Lets sound rows through and remembers the others, so that one damaged row never hides a whole survey, nor itself. */
import { checkRow, type RowOf, type TableName } from './rowSchemas.ts';

export type DamagedRow = { readonly table: TableName; readonly id: string; readonly fault: string };

export type SoundRows = {
  one<Name extends TableName>(table: Name, row: RowOf[Name] | undefined): RowOf[Name] | undefined;
  all<Name extends TableName>(table: Name, rows: readonly RowOf[Name][]): RowOf[Name][];
  damagedRows(): readonly DamagedRow[];
};

export function createSoundRows(): SoundRows {
  const damaged = new Map<string, DamagedRow>();
  const isSound = <Name extends TableName>(table: Name, row: RowOf[Name]): boolean => {
    const check = checkRow(table, row);
    if (!check.isSound) damaged.set(`${table} ${row.id}`, { table, id: row.id, fault: check.fault });
    return check.isSound;
  };
  return {
    one: (table, row) => (row !== undefined && isSound(table, row) ? row : undefined),
    all: (table, rows) => rows.filter((row) => isSound(table, row)),
    damagedRows: () => [...damaged.values()],
  };
}
