/**
 * Lets sound rows through and remembers the others, so that one damaged row never hides a whole survey, nor itself.
 * Deleted rows are not let through, and what is let through comes without its stamp: that is the records' own affair.
 */
import type { Stamped } from '../piano/stamp.ts';
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
    one: (table, row) => (row !== undefined && !isDeleted(row) && isSound(table, row) ? unstamped(row) : undefined),
    all: (table, rows) => rows.filter((row) => !isDeleted(row) && isSound(table, row)).map(unstamped),
    damagedRows: () => [...damaged.values()],
  };
}

export function isDeleted(row: object & Stamped): boolean {
  return row.deletedAt !== undefined;
}

/** What a merge leaves on a take that lost its place to another (merge/keptTakes.ts). */
type Merged = Stamped & { readonly setAsideByMerging?: string };

export function unstamped<Row extends object>(row: Row & Stamped): Row {
  const { stamp: _, deletedAt: __, deletionId: ___, setAsideByMerging: ____, ...rest } = row as Row & Merged;
  return rest as unknown as Row;
}
