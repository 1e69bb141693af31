/** All tables of an archive in the order in which rows refer to one another. */
import type { ArchiveBatch, ArchiveRowKind, ArchiveRows } from './archiveContents.ts';
import { ArchiveFault } from './archiveFault.ts';
import type { ArchiveReading } from './archiveReading.ts';
import {
  decisions,
  gone,
  photographs,
  rivals,
  scheduleNotes,
  schedules,
  torque,
  trials,
  unattached,
  wireGrades,
  wireStrengths,
} from './benchTables.ts';
import { PACKAGE_FILE } from './dataPackage.ts';
import { calibrations, events, instruments, surveys, visits } from './instrumentTables.ts';
import { type FileKind, readFileRows } from './readFiles.ts';
import { beats, components, earlierReadings, partials, readings, sounds } from './readingTables.ts';
import { type ReadRow, readRows, type TableToRead } from './readRows.ts';
import { assembleTake, checkLeftOver, createRowCursor, type MeasuredTables, type RowCursor } from './readTakes.ts';
import type { TableSpec } from './tableSpec.ts';
import type { PlainObject } from './taggedJson.ts';
import { entryBytes } from './zipEntry.ts';

export async function* readBatches(reading: ArchiveReading): AsyncGenerator<ArchiveBatch> {
  checkFilesAreThere(reading);
  for (const [kind, read] of STEPS) if (reading.isWanted(kind)) yield* read(reading);
  if (STEPS.every(([kind]) => reading.isWanted(kind))) await checkTheRest(reading);
}

/** What no table has named is unpacked as well, to see whether it is whole; of the clips and pictures among it nobody would know. */
async function checkTheRest(reading: ArchiveReading): Promise<void> {
  const { files, resources, named, complain } = reading;
  for (const [path, entry] of files) {
    const resource = resources.get(path);
    if (resource?.isTable || named.has(path) || path === PACKAGE_FILE) continue;
    if (resource) complain({ file: path, row: null, column: null, message: 'is named by no row of any table' });
    try {
      for await (const _ of entryBytes(reading, entry, resource?.expected));
    } catch (error) {
      if (!(error instanceof ArchiveFault) || error.reason !== 'damaged') throw error;
      complain(error.complaint);
    }
  }
}

type Step = (reading: ArchiveReading) => AsyncGenerator<ArchiveBatch>;

/** Parents before children. */
const STEPS: readonly (readonly [ArchiveRowKind, Step])[] = [
  ['instruments', (reading) => plain(reading, instruments, 'instruments')],
  ['events', (reading) => plain(reading, events, 'events')],
  ['visits', (reading) => plain(reading, visits, 'visits')],
  ['surveys', (reading) => plain(reading, surveys, 'surveys')],
  ['calibrations', (reading) => plain(reading, calibrations, 'calibrations')],
  ['takes', (reading) => takes(reading)],
  ['sounds', (reading) => withFiles(reading, sounds, 'sounds')],
  ['torques', (reading) => plain(reading, torque, 'torques')],
  ['decisions', (reading) => plain(reading, decisions, 'decisions')],
  ['trials', (reading) => plain(reading, trials, 'trials')],
  ['schedules', (reading) => withLines(reading, SCHEDULES)],
  ['wireGrades', (reading) => withLines(reading, WIRE_GRADES)],
  ['photographs', (reading) => withFiles(reading, photographs, 'photographs')],
  ['rivals', (reading) => plain(reading, rivals, 'rivals')],
  ['gone', (reading) => plain(reading, gone, 'gone')],
  ['unattached', (reading) => plain(reading, unattached, 'unattached')],
];

async function* withFiles(reading: ArchiveReading, spec: TableSpec, kind: FileKind): AsyncGenerator<ArchiveBatch> {
  for await (const rows of checkedRows(reading, spec)) yield* readFileRows(reading, kind, rows);
}

function checkFilesAreThere({ files, resources, complain }: ArchiveReading): void {
  for (const { path } of resources.values())
    if (!files.has(path))
      complain({
        file: path,
        row: null,
        column: null,
        message: 'is named in datapackage.json and is not in the archive',
      });
}

/** The checked cells are what the type says; what only the records ask for they check themselves when they are written. */
function batch<Kind extends ArchiveRowKind>(kind: Kind, rows: readonly object[]): ArchiveBatch {
  return { kind, rows: rows as readonly ArchiveRows[Kind][] } as ArchiveBatch;
}

async function* plain(reading: ArchiveReading, spec: TableSpec, kind: ArchiveRowKind): AsyncGenerator<ArchiveBatch> {
  for await (const rows of checkedRows(reading, spec))
    yield batch(
      kind,
      rows.map(({ row }) => row),
    );
}

/** Nothing where the table is not in the archive. */
function tableToRead(reading: ArchiveReading, spec: TableSpec): TableToRead | undefined {
  const { files, resources } = reading;
  const resource = [...resources.values()].find(({ name }) => name === spec.name);
  const entry = resource && files.get(resource.path);
  return entry && { spec, file: resource.path, bytes: entryBytes(reading, entry, resource.expected) };
}

async function* checkedRows(reading: ArchiveReading, spec: TableSpec): AsyncGenerator<ReadRow[]> {
  const table = tableToRead(reading, spec);
  if (table === undefined) return;
  for await (const rows of readRows(table, reading.complain)) {
    const sound = rows.filter((read) => reading.ids.check(table, read, reading.complain));
    if (sound.length > 0) yield sound;
  }
}

function cursorOver(reading: ArchiveReading, spec: TableSpec): RowCursor {
  const table = tableToRead(reading, spec);
  return createRowCursor(table?.file ?? `${spec.name}.csv`, table ? readRows(table, reading.complain) : noRows());
}

async function* noRows(): AsyncGenerator<ReadRow[]> {
  yield* [];
}

/** A survey or so: with all their partials about a megabyte. */
const MOST_TAKES = 88;

async function* takes(reading: ArchiveReading): AsyncGenerator<ArchiveBatch> {
  const tables: MeasuredTables = {
    earlier: cursorOver(reading, earlierReadings),
    partials: cursorOver(reading, partials),
    beats: cursorOver(reading, beats),
    components: cursorOver(reading, components),
  };
  let together: object[] = [];
  for await (const rows of checkedRows(reading, readings))
    for (const row of rows) {
      together.push(await assembleTake(row, tables, reading.complain));
      if (together.length < MOST_TAKES) continue;
      yield batch('takes', together);
      together = [];
    }
  if (together.length > 0) yield batch('takes', together);
  for (const cursor of Object.values(tables)) await checkLeftOver(cursor, reading.complain);
}

type WithLines = {
  readonly spec: TableSpec;
  readonly kind: ArchiveRowKind;
  readonly lines: TableSpec;
  /** The field of a line that names what it belongs to. */
  readonly parent: string;
};

const SCHEDULES: WithLines = { spec: schedules, kind: 'schedules', lines: scheduleNotes, parent: 'scheduleId' };
const WIRE_GRADES: WithLines = { spec: wireGrades, kind: 'wireGrades', lines: wireStrengths, parent: 'wireGradeId' };

async function* withLines(
  reading: ArchiveReading,
  { spec, kind, lines, parent }: WithLines,
): AsyncGenerator<ArchiveBatch> {
  const parents = new Map<unknown, PlainObject & { rows: PlainObject[] }>();
  for await (const rows of checkedRows(reading, spec))
    for (const { row } of rows) parents.set(row.id, { ...row, rows: [] });
  for await (const rows of checkedRows(reading, lines))
    for (const { row } of rows) {
      const { [parent]: id, ...line } = row;
      parents.get(id)?.rows.push(line);
    }
  if (parents.size > 0) yield batch(kind, [...parents.values()]);
}
