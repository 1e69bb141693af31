/** The rows of one table of an archive, checked one by one. */
import { ArchiveFault, type Complaint } from './archiveFault.ts';
import { csvRecords } from './csvRecords.ts';
import { createRowDecoder, type RowDecoder } from './rowDecoder.ts';
import type { TableSpec } from './tableSpec.ts';
import { isPlainObject, type PlainObject } from './taggedJson.ts';

/** Takes a complaint, and throws where the first one ends the reading. */
export type Complain = (complaint: Complaint) => void;

export type ReadRow = { readonly row: PlainObject; readonly number: number };

export type TableToRead = {
  readonly spec: TableSpec;
  readonly file: string;
  readonly bytes: AsyncIterable<Uint8Array>;
};

/** Rows that are wrong are complained of and left out. What is wrong with the file ends the table. */
export async function* readRows({ spec, file, bytes }: TableToRead, complain: Complain): AsyncGenerator<ReadRow[]> {
  let reader: RowDecoder | undefined;
  let columnCount = 0;
  let number = 1;
  const complainHere = (column: string | null, message: string) => complain({ file, row: number, column, message });
  try {
    for await (const { firstRow, records } of csvRecords(file, bytes)) {
      const rows: ReadRow[] = [];
      for (let index = 0; index < records.length; index++) {
        const cells = records[index] ?? [];
        number = firstRow + index;
        if (reader === undefined) {
          reader = decoderFor(spec, file, cells);
          columnCount = cells.length;
        } else if (cells.length !== columnCount) {
          if (cells.length !== 1 || cells[0] !== '')
            complainHere(null, `has ${cells.length} cells where the header names ${columnCount} columns`);
        } else {
          const row = reader.row(cells, complainHere);
          if (row !== undefined) rows.push({ row, number });
        }
      }
      if (rows.length > 0) yield rows;
    }
    if (reader === undefined)
      complain({ file, row: 1, column: null, message: 'is empty; its first row has to name the columns' });
  } catch (error) {
    if (!(error instanceof ArchiveFault) || error.reason !== 'damaged') throw error;
    complain(error.complaint);
  }
}

function decoderFor(spec: TableSpec, file: string, header: readonly string[]): RowDecoder {
  const outcome = createRowDecoder(spec, header);
  if (outcome.ok) return outcome.decoder;
  const { column, message } = outcome;
  throw new ArchiveFault('damaged', { file, row: 1, column, message });
}

export type KnownIds = {
  /** Complains where the row refers to one that is not there, or bears an id that another row has. */
  check(table: TableToRead, read: ReadRow, complain: Complain): boolean;
  has(table: string, id: unknown): boolean;
};

/** @param referencesOf the columns of a table that name rows of others, as far as those are read too */
export function createKnownIds(
  referencesOf: (
    spec: TableSpec,
  ) => readonly { readonly path: string; readonly column: string; readonly table: string }[],
): KnownIds {
  const idsOf = new Map<string, Set<unknown>>();
  const has = (table: string, id: unknown) => idsOf.get(table)?.has(id) === true;
  return {
    has,
    check({ spec, file }, { row, number }, complain) {
      for (const { path, column, table } of referencesOf(spec)) {
        const id = row[path];
        if (id === null || has(table, id)) continue;
        complain({ file, row: number, column, message: `names ${quoted(id)}, which is not in ${table}.csv` });
        return false;
      }
      const { id } = row;
      if (spec.key[0] !== 'id' || spec.key.length !== 1) return true;
      if (typeof id === 'string' && !has(spec.name, id)) {
        const ids = idsOf.get(spec.name) ?? new Set();
        idsOf.set(spec.name, ids.add(ownCopy(id)));
        return true;
      }
      complain({ file, row: number, column: 'id', message: `${quoted(id)} stands in this table twice` });
      return false;
    },
  };
}

function quoted(id: unknown): string {
  return isPlainObject(id) ? 'an object' : JSON.stringify(String(id).slice(0, 80));
}

const utf8 = new TextEncoder();
const fromUtf8 = new TextDecoder();

/** Not a part of the file's text, which would otherwise stay in memory for the sake of its ids. */
function ownCopy(id: string): string {
  return fromUtf8.decode(utf8.encode(id));
}
