/** What the database holds, as an archive takes it: read a few hundred rows at a time, so that its size does not matter. */
import type { ArchiveContents, RowSource, UnattachedRow } from '../files/archive/archiveContents.ts';
import { someInstruments } from '../files/archive/someInstruments.ts';
import type { InstrumentId } from '../piano/ids.ts';
import type { Take } from '../piano/instrument.ts';
import type { RecordsDatabase } from './database.ts';
import { bothFlags } from './recordSet.ts';
import { checkRow, type RowOf, type TableName } from './rowSchemas.ts';
import { type RivalRow, rowToSound, rowToTake, type TakeRow } from './rows.ts';

/** So many rows are in memory at once; sounds and pictures are larger. */
const CHUNK_ROWS = 200;
const CHUNK_FILES = 8;

/**
 * Rows as they are stored, deleted ones and stamps included. A row that is not sound goes into the archive as it is, as unattached.
 * @param instrumentIds null: everything
 */
export async function archiveSource(
  database: RecordsDatabase,
  instrumentIds: readonly InstrumentId[] | null,
): Promise<ArchiveContents> {
  const ids = instrumentIds ?? (await allInstrumentIds(database));
  const damaged: UnattachedRow[] = [];
  const rows = <Name extends TableName>(table: Name) => rowsOfTable(database, { table, ids, damaged });
  const everything: ArchiveContents = {
    instruments: chunked(database, 'instruments', () => Promise.resolve([...ids]), damaged),
    events: rows('events'),
    visits: rows('visits'),
    surveys: rows('surveys'),
    calibrations: wholeTable(database, 'calibrations', damaged),
    takes: () => takesOf(database, ids, damaged),
    sounds: mapped(rows('sounds'), rowToSound),
    torques: rows('torques'),
    decisions: rows('decisions'),
    trials: rows('trials'),
    schedules: rows('schedules'),
    wireGrades: wholeTable(database, 'wireGrades', damaged),
    photographs: rows('photographs'),
    photographFiles: rows('photographFiles'),
    rivals: rivalsOf(database, instrumentIds),
    gone: goneOf(database, instrumentIds),
    unattached: distinct(damaged),
  };
  return instrumentIds === null
    ? everything
    : { ...someInstruments(everything, new Set(ids)), unattached: distinct(damaged) };
}

/** Of the table of instruments and of every row that names one, so that a row without its instrument goes along as well. */
async function allInstrumentIds(database: RecordsDatabase): Promise<InstrumentId[]> {
  const ids = new Set<InstrumentId>(await database.instruments.toCollection().primaryKeys());
  for (const table of [
    'visits',
    'surveys',
    'events',
    'torques',
    'schedules',
    'decisions',
    'trials',
    'photographs',
  ] as const)
    for (const id of await database.table(table).orderBy('instrumentId').uniqueKeys())
      ids.add(String(id) as InstrumentId);
  const takes = (await database.takes.orderBy('[instrumentId+keptFlag]').uniqueKeys()) as unknown as [
    InstrumentId,
    0 | 1,
  ][];
  for (const [id] of takes) ids.add(id);
  return [...ids].sort();
}

type Wish<Name extends TableName> = {
  readonly table: Name;
  readonly ids: readonly InstrumentId[];
  readonly damaged: UnattachedRow[];
};

async function* rowsOfTable<Name extends TableName>(
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

async function* takesOf(
  database: RecordsDatabase,
  ids: readonly InstrumentId[],
  damaged: UnattachedRow[],
): AsyncGenerator<Take> {
  for (const instrumentId of ids) {
    const parts = bothFlags(instrumentId).map((key) => database.takes.where('[instrumentId+keptFlag]').equals(key));
    const counts = await Promise.all(parts.map((part) => part.count()));
    const isSmall = counts.reduce((sum, count) => sum + count, 0) <= MOST_AT_ONCE;
    const keys = async () => (await Promise.all(parts.map((part) => part.primaryKeys()))).flat() as string[];
    const rows = isSmall
      ? soundOnes('takes', (await Promise.all(parts.map((part) => part.toArray()))).flat().sort(byId), damaged)
      : chunked(database, 'takes', keys, damaged);
    yield* mapped(rows, rowToTake);
  }
}

function byId(one: { readonly id: string }, other: { readonly id: string }): number {
  return one.id < other.id ? -1 : 1;
}

async function* wholeTable<Name extends TableName>(
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
async function* chunked<Name extends TableName>(
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

async function* mapped<From, To>(rows: RowSource<From>, change: (row: From) => To): AsyncGenerator<To> {
  for await (const row of rows) yield change(row);
}

/** A take that is not sound is met once for each table that takes are written to. */
function* distinct(damaged: readonly UnattachedRow[]): Generator<UnattachedRow> {
  yield* new Map(damaged.map((row) => [`${row.table}/${row.rowId}`, row])).values();
}

/** Takes are stored packed; in an archive every figure has its name. */
async function* rivalsOf(
  database: RecordsDatabase,
  instrumentIds: readonly InstrumentId[] | null,
): AsyncGenerator<RivalRow> {
  const { rivals } = database;
  const found = instrumentIds === null ? rivals.toCollection() : rivals.where('instrumentId').anyOf(instrumentIds);
  for (const rival of await found.toArray()) {
    const isTake = rival.table === 'takes' && checkRow('takes', rival.row).isSound;
    yield isTake ? { ...rival, row: rowToTake(rival.row as TakeRow) } : rival;
  }
}

async function* goneOf(database: RecordsDatabase, instrumentIds: readonly InstrumentId[] | null) {
  const isWanted = (id: string | null) => instrumentIds === null || instrumentIds.includes(id as InstrumentId);
  yield* await database.gone.filter((row) => isWanted(row.instrumentId)).toArray();
}
