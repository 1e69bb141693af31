/** Rows of the database as an archive takes them, a few hundred in memory at a time. */
import type { RowSource, UnattachedRow } from '../files/archive/archiveContents.ts';
import type { InstrumentId } from '../piano/ids.ts';
import type { Take } from '../piano/instrument.ts';
import type { RecordsDatabase } from './database.ts';
import { bothFlags } from './recordSet.ts';
import { checkRow, type RowOf, type TableName } from './rowSchemas.ts';
import { rowToTake, type TakeRow } from './rows.ts';

/** So many rows are in memory at once; sounds and pictures are larger. */
const CHUNK_ROWS = 200;
const CHUNK_FILES = 8;

type Wish<Name extends TableName> = {
  readonly table: Name;
  readonly ids: readonly InstrumentId[];
  readonly damaged: UnattachedRow[];
};

export async function* rowsOfTable<Name extends TableName>(
  database: RecordsDatabase,
  { table, ids, damaged }: Wish<Name>,
): AsyncGenerator<RowOf[Name]> {
  for (const instrumentId of ids) {
    const keys = () => database.table(table).where({ instrumentId }).primaryKeys() as PromiseLike<string[]>;
    yield* chunked(database, table, keys, damaged);
  }
}

/** An instrument's takes are read at once where they are few enough, which is many times faster than one by one. */
const MOST_AT_ONCE = 4000;

/** While the takes of one instrument are written out those of the next are being fetched, and no more than that. */
export async function* takesOf(
  database: RecordsDatabase,
  ids: readonly InstrumentId[],
  damaged: UnattachedRow[],
): AsyncGenerator<Take> {
  let ahead: Promise<TakesFetched> | undefined;
  for (const [index, instrumentId] of ids.entries()) {
    const { rows, keys } = await (ahead ?? fetchTakes(database, instrumentId));
    const next = ids[index + 1];
    ahead = next === undefined ? undefined : fetchTakes(database, next);
    ahead?.catch(() => undefined); // told where it is waited for
    const sound = rows ? soundOnes('takes', rows, damaged) : chunked(database, 'takes', keys, damaged);
    yield* mapped(sound, rowToTake);
  }
}

type TakesFetched = {
  /** By id; null where they are too many at once. */
  readonly rows: readonly TakeRow[] | null;
  readonly keys: () => Promise<string[]>;
};

async function fetchTakes(database: RecordsDatabase, instrumentId: InstrumentId): Promise<TakesFetched> {
  const parts = bothFlags(instrumentId).map((key) => database.takes.where('[instrumentId+keptFlag]').equals(key));
  const counts = await Promise.all(parts.map((part) => part.count()));
  const isSmall = counts.reduce((sum, count) => sum + count, 0) <= MOST_AT_ONCE;
  return {
    rows: isSmall ? (await Promise.all(parts.map((part) => part.toArray()))).flat().sort(byId) : null,
    keys: async () => (await Promise.all(parts.map((part) => part.primaryKeys()))).flat() as string[],
  };
}

function byId(one: { readonly id: string }, other: { readonly id: string }): number {
  return one.id < other.id ? -1 : 1;
}

export async function* wholeTable<Name extends TableName>(
  database: RecordsDatabase,
  table: Name,
  damaged: UnattachedRow[],
): AsyncGenerator<RowOf[Name]> {
  yield* chunked(
    database,
    table,
    () => database.table(table).toCollection().primaryKeys() as PromiseLike<string[]>,
    damaged,
  );
}

/** Keys first, rows later: rows that went in between are left out. */
export async function* chunked<Name extends TableName>(
  database: RecordsDatabase,
  table: Name,
  keys: () => PromiseLike<string[]>,
  damaged: UnattachedRow[],
): AsyncGenerator<RowOf[Name]> {
  const size = table === 'sounds' || table === 'photographFiles' ? CHUNK_FILES : CHUNK_ROWS;
  const all = (await keys()).sort();
  for (let start = 0; start < all.length; start += size) {
    const rows = await database.table<RowOf[Name], string>(table).bulkGet(all.slice(start, start + size));
    yield* soundOnes(
      table,
      rows.filter((row) => row !== undefined),
      damaged,
    );
  }
}

function* soundOnes<Name extends TableName>(
  table: Name,
  rows: readonly RowOf[Name][],
  damaged: UnattachedRow[],
): Generator<RowOf[Name]> {
  for (const row of rows)
    if (checkRow(table, row).isSound) yield row;
    else damaged.push({ table, rowId: String(row.id), row });
}

export async function* mapped<From, To>(rows: RowSource<From>, change: (row: From) => To): AsyncGenerator<To> {
  for await (const row of rows) yield change(row);
}
