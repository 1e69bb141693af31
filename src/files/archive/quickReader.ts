/** The quick way from cells to a row, for tables of very many rows (`quickRow` in tableSpec.ts), where nothing is out of the ordinary. */
import { type CellReader, cellReader, UnreadableCell } from './cellValues.ts';
import { headerOf } from './rowEncoder.ts';
import type { TableSpec } from './tableSpec.ts';
import type { PlainObject } from './taggedJson.ts';

/** Undefined for a row that has to be looked at more closely, as one that has a fault. */
export type QuickReader = (cells: readonly string[]) => PlainObject | undefined;

/** Undefined where the file has no columns in the usual order, or its table no quick way. */
export function quickReader({ quickRow, ...spec }: TableSpec, header: readonly string[]): QuickReader | undefined {
  const usual = headerOf(spec);
  if (quickRow === undefined || header.length !== usual.length || usual.some((name, index) => name !== header[index]))
    return undefined;
  const readers = spec.columns.map((column) => cellReader(column));
  const isNull = spec.columns.map(({ empty }) => empty === 'null');
  const values: unknown[] = spec.columns.map(() => null);
  return (cells) => (fill(values, cells, { readers, isNull }) ? quickRow(values) : undefined);
}

type Columns = { readonly readers: readonly CellReader[]; readonly isNull: readonly boolean[] };

function fill(values: unknown[], cells: readonly string[], { readers, isNull }: Columns): boolean {
  if (cells[readers.length] !== '') return false; // `further`
  for (let index = 0; index < readers.length; index++) {
    const cell = cells[index] ?? '';
    if (cell === '') {
      if (!isNull[index]) return false;
      values[index] = null;
      continue;
    }
    const value = readers[index]?.(cell);
    if (value instanceof UnreadableCell) return false;
    values[index] = value;
  }
  return true;
}
