/** Taking names of people out of what is exported. */
import type { LeftOut } from './archiveContents.ts';
import { isPlainObject, type PlainObject } from './taggedJson.ts';

/** Fields that are taken out, by table as the records name it. A field that has to be there is emptied instead. */
const FIELDS: Readonly<Record<string, Readonly<Record<string, { readonly of: LeftOut; readonly emptied: boolean }>>>> =
  {
    instruments: {
      ownerName: { of: 'owners', emptied: false },
      ownerAddress: { of: 'owners', emptied: false },
    },
    visits: { visitedBy: { of: 'visitors', emptied: true } },
  };

export function withoutNames<Row extends object>(table: string, row: Row, leftOut: readonly LeftOut[]): Row {
  const fields = Object.entries(FIELDS[table] ?? {}).filter(([, { of }]) => leftOut.includes(of));
  if (fields.length === 0) return row;
  const copy: PlainObject = { ...(row as PlainObject) };
  for (const [name, { emptied }] of fields) {
    if (emptied && name in copy) copy[name] = '';
    else delete copy[name];
  }
  return copy as Row;
}

/** For rows that carry a row of another table in them. */
export function withoutNamesInside<Row extends { readonly table: string; readonly row: unknown }>(
  row: Row,
  leftOut: readonly LeftOut[],
): Row {
  return isPlainObject(row.row) ? { ...row, row: withoutNames(row.table, row.row, leftOut) } : row;
}

/** Fields that say nothing in an archive that left them out, for whoever merges it. */
export function fieldsLeftOut(table: string, leftOut: readonly LeftOut[]): string[] {
  return Object.entries(FIELDS[table] ?? {}).flatMap(([name, { of }]) => (leftOut.includes(of) ? [name] : []));
}
