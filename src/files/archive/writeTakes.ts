/** The tables of what was measured. The takes are asked for once for each table that has rows. */
import type { Take } from '../../piano/instrument.ts';
import type { RowSource } from './archiveContents.ts';
import { beats, components, earlierReadings, partials, readings } from './readingTables.ts';
import type { TableSpec } from './tableSpec.ts';
import { beatRows, componentRows, earlierRows, partialRows, readingRow } from './takeRows.ts';
import { createTableWriter } from './writeTable.ts';
import { recordsChanged, type Writing } from './writing.ts';

type TakeTable = { readonly spec: TableSpec; readonly rowsOf: (take: Take) => Iterable<object> };

const FURTHER_TABLES: readonly TakeTable[] = [
  { spec: earlierReadings, rowsOf: earlierRows },
  { spec: partials, rowsOf: partialRows },
  { spec: beats, rowsOf: beatRows },
  { spec: components, rowsOf: componentRows },
];

export async function writeTakes(writing: Writing, takes: () => RowSource<Take>): Promise<void> {
  const ids: string[] = [];
  const tablesWithRows = new Set<TableSpec>();
  const rowsOfReading = (take: Take) => {
    if (!writing.parents.accept(readings, take)) {
      writing.unattached.push({ table: 'takes', rowId: take.id, row: take });
      return [];
    }
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
  const table = createTableWriter(writing.zip, spec);
  let rowCount = 0;
  for await (const take of takes)
    for (const row of rowsOf(take)) {
      rowCount += 1;
      if (!table.add(row)) continue;
      await table.flush();
      await writing.passOn({ table: spec.name, rowCount });
    }
  writing.files.push(await table.finish());
  await writing.passOn({ table: spec.name, rowCount });
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
