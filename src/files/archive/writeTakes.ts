/**
 * The tables of what was measured. Where packed files can wait for their turn (spool.ts) the takes are asked for once, else once for each
 * table that has rows.
 */
import type { Take } from '../../piano/instrument.ts';
import type { RowSource } from './archiveContents.ts';
import { beats, components, earlierReadings, partials, readings } from './readingTables.ts';
import type { Spool } from './spool.ts';
import type { TableSpec } from './tableSpec.ts';
import { beatRows, componentRows, earlierRows, partialRows, readingRow } from './takeRows.ts';
import { createTableWriter, fileOfTable, type TableWriter } from './writeTable.ts';
import { recordsChanged, type Writing } from './writing.ts';

type TakeTable = { readonly spec: TableSpec; readonly rowsOf: (take: Take) => Iterable<object> };

const FURTHER_TABLES: readonly TakeTable[] = [
  { spec: earlierReadings, rowsOf: earlierRows },
  { spec: partials, rowsOf: partialRows },
  { spec: beats, rowsOf: beatRows },
  { spec: components, rowsOf: componentRows },
];

export async function writeTakes(writing: Writing, takes: () => RowSource<Take>): Promise<void> {
  const { createSpool } = writing;
  if (!createSpool) return writeOneByOne(writing, takes);
  const spools = FURTHER_TABLES.map(() => createSpool());
  try {
    await writeTogether(writing, takes(), spools);
  } finally {
    for (const spool of spools) await spool.discard();
  }
}

/** False where its instrument, visit or survey is not there: it is set aside, to be written as unattached. */
function isAttached({ parents, unattached }: Writing, take: Take): boolean {
  if (parents.accept(readings, take)) return true;
  unattached.push({ table: 'takes', rowId: take.id, row: take });
  return false;
}

type OpenTable = TakeTable & { readonly table: TableWriter; rowCount: number };

async function writeTogether(writing: Writing, takes: RowSource<Take>, spools: readonly Spool[]): Promise<void> {
  const { zip } = writing;
  const handOn = () => writing.passOn({ table: readings.name, rowCount: first.rowCount });
  const first: OpenTable = {
    spec: readings,
    rowsOf: (take) => [readingRow(take)],
    table: createTableWriter(zip.file(fileOfTable(readings), false), readings),
    rowCount: 0,
  };
  const further = FURTHER_TABLES.map((takeTable, index): OpenTable => {
    const file = zip.spooledFile(fileOfTable(takeTable.spec), spools[index] as Spool, handOn);
    return { ...takeTable, table: createTableWriter(file, takeTable.spec), rowCount: 0 };
  });
  for await (const take of takes)
    if (isAttached(writing, take)) for (const open of [first, ...further]) await addRows(writing, open, take);
  for (const { table, spec, rowCount } of [first, ...further]) {
    writing.files.push(await table.finish());
    await writing.passOn({ table: spec.name, rowCount });
  }
}

async function addRows(writing: Writing, open: OpenTable, take: Take): Promise<void> {
  for (const row of open.rowsOf(take)) {
    open.rowCount += 1;
    if (!open.table.add(row)) continue;
    await open.table.flush();
    await writing.passOn({ table: open.spec.name, rowCount: open.rowCount });
  }
}

async function writeOneByOne(writing: Writing, takes: () => RowSource<Take>): Promise<void> {
  const ids: string[] = [];
  const tablesWithRows = new Set<TableSpec>();
  const rowsOfReading = (take: Take) => {
    if (!isAttached(writing, take)) return [];
    ids.push(take.id);
    for (const { spec, rowsOf } of FURTHER_TABLES)
      if (!tablesWithRows.has(spec)) for (const _ of rowsOf(take)) tablesWithRows.add(spec);
    return [readingRow(take)];
  };
  await writeTable(writing, takes(), { spec: readings, rowsOf: rowsOfReading });
  for (const table of FURTHER_TABLES) {
    if (!tablesWithRows.has(table.spec)) await writeTable(writing, [], table);
    else await writeTable(writing, sameTakes(writing, takes(), ids), table);
  }
}

async function writeTable(writing: Writing, takes: RowSource<Take>, { spec, rowsOf }: TakeTable): Promise<void> {
  const table = createTableWriter(writing.zip.file(fileOfTable(spec), false), spec);
  const open: OpenTable = { spec, rowsOf, table, rowCount: 0 };
  for await (const take of takes) await addRows(writing, open, take);
  writing.files.push(await table.finish());
  await writing.passOn({ table: spec.name, rowCount: open.rowCount });
}

/** @throws {ArchiveFault} where they are not the takes of the first time, in the same order */
async function* sameTakes({ parents }: Writing, takes: RowSource<Take>, ids: readonly string[]): AsyncGenerator<Take> {
  let index = 0;
  for await (const take of takes) {
    if (take.id === ids[index]) {
      index += 1;
      yield take;
    } else if (parents.has(readings.name, take.id) || index >= ids.length) recordsChanged();
  }
  if (index !== ids.length) recordsChanged();
}
