/** What the database holds, as an archive takes it: read a few hundred rows at a time, so that its size does not matter. */
import type { ArchiveContents, UnattachedRow } from '../files/archive/archiveContents.ts';
import { someInstruments } from '../files/archive/someInstruments.ts';
import type { InstrumentId } from '../piano/ids.ts';
import { chunked, mapped, rowsOfTable, takesOf, wholeTable } from './archiveRows.ts';
import type { RecordsDatabase } from './database.ts';
import { checkRow, type TableName } from './rowSchemas.ts';
import { type RivalRow, rowToSound, rowToTake, type TakeRow } from './rows.ts';

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
