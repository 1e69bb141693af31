/**
 * Writes an archive: a ZIP file with a CSV file for each table, the sounds and pictures, README.txt and datapackage.json. It is written
 * from front to back and never held whole, whatever its size.
 */
import type { Take } from '../../piano/instrument.ts';
import type { ArchiveContents, LeftOut, RowSource } from './archiveContents.ts';
import { type StopSignal, stopIfAsked } from './archiveFault.ts';
import { benchRowsOf } from './benchRows.ts';
import { rivals as rivalsTable, unattached as unattachedTable } from './benchTables.ts';
import type { ByteWork } from './byteWork.ts';
import { dataPackage, PACKAGE_FILE, type PackagedFile } from './dataPackage.ts';
import { calibrations, events, instruments, surveys, visits } from './instrumentTables.ts';
import { withoutNames, withoutNamesInside } from './leaveOut.ts';
import { createParentIds } from './parentIds.ts';
import { readmeText } from './readmeText.ts';
import type { Spool } from './spool.ts';
import { writePictures, writeSounds } from './writeFiles.ts';
import { writeTakes } from './writeTakes.ts';
import { type WriteProgress, type Writing, writeRows } from './writing.ts';
import { createZipWriter } from './zipWriter.ts';

export type WriteOptions = {
  /** ISO 8601 date and time. */
  readonly createdAt: string;
  readonly programVersion: string;
  readonly leaveOut?: readonly LeftOut[];
  readonly signal?: StopSignal;
  readonly onProgress?: (progress: WriteProgress) => void;
  /** What packs it and works its checksums out; the usual means unless given. */
  readonly byteWork?: ByteWork;
  /**
   * Makes room for files that wait for their turn: the takes are then asked for once, and not again for each of their tables.
   * What is begun is discarded, whatever happens.
   */
  readonly createSpool?: () => Spool;
  /** The size at which an archive is refused as too large; the most that a ZIP file holds, unless said. */
  readonly mostBytes?: number;
};

export type WrittenArchive = {
  readonly byteCount: number;
  /** By the name of the table in the archive. */
  readonly rowCounts: Readonly<Record<string, number>>;
  readonly soundCount: number;
  readonly photographCount: number;
};

/**
 * @param write takes the archive piece by piece; the next piece waits for it
 * @throws {ArchiveFault} `too-large`, `cancelled`, or `records-changed` where `takes` gave other takes the second time
 */
export async function writeArchive(
  contents: ArchiveContents,
  options: WriteOptions,
  write: (bytes: Uint8Array) => void | Promise<void>,
): Promise<WrittenArchive> {
  const { createdAt, programVersion, leaveOut = [], mostBytes } = options;
  const facts = { createdAt, programVersion, leftOut: leaveOut };
  let byteCount = 0;
  const zip = createZipWriter(createdAt, { mostBytes, byteWork: options.byteWork });
  const handOn = async () => {
    for (const piece of zip.take()) {
      byteCount += piece.length;
      await write(piece);
    }
  };
  const passOn = async (progress: WriteProgress) => {
    stopIfAsked(options.signal);
    options.onProgress?.(progress);
    await handOn();
  };
  const { createSpool } = options;
  const writing: Writing = {
    zip,
    parents: createParentIds(),
    leaveOut,
    files: [],
    unattached: [],
    createSpool,
    passOn,
  };
  await writeText(writing, 'README.txt', readmeText(facts));
  await writeAll(writing, contents);
  const described = writing.files.slice(1);
  await writeText(writing, PACKAGE_FILE, `${JSON.stringify(dataPackage(facts, described), null, 1)}\n`);
  zip.finish();
  await handOn();
  return { byteCount, ...countsOf(described) };
}

function countsOf(files: readonly PackagedFile[]): Omit<WrittenArchive, 'byteCount'> {
  const tables = files.flatMap(({ name, rowCount }) => (rowCount === null ? [] : [[name, rowCount] as const]));
  const inFolder = (folder: string) => files.filter(({ path }) => path.startsWith(`${folder}/`)).length;
  return {
    rowCounts: Object.fromEntries(tables),
    soundCount: inFolder('sounds'),
    photographCount: inFolder('photographs'),
  };
}

async function writeText({ zip, files, passOn }: Writing, path: string, text: string): Promise<void> {
  const file = zip.file(path, false);
  await file.push(new TextEncoder().encode(text));
  files.push({ ...(await file.finish()), name: path, rowCount: null });
  await passOn({ table: path, rowCount: 0 });
}

async function writeAll(writing: Writing, contents: ArchiveContents): Promise<void> {
  const { leaveOut } = writing;
  const named = <Row extends object>(table: string, rows: RowSource<Row> | undefined) =>
    mapped(rows, (row) => withoutNames(table, row, leaveOut));
  await writeRows(writing, instruments, named('instruments', contents.instruments));
  await writeRows(writing, events, contents.events);
  await writeRows(writing, visits, named('visits', contents.visits));
  await writeRows(writing, surveys, contents.surveys);
  await writeRows(writing, calibrations, contents.calibrations);
  await writeTakes(writing, contents.takes ?? (() => [] as Take[]));
  await writeSounds(writing, leaveOut.includes('sounds') ? [] : contents.sounds);
  for (const { spec, rows, kind } of benchRowsOf(contents)) await writeRows(writing, spec, rows, kind);
  await writePictures(writing, contents.photographs, leaveOut.includes('photographs') ? [] : contents.photographFiles);
  const stripped = mapped(contents.rivals, (row) => withoutNamesInside(row, leaveOut));
  await writeRows(writing, rivalsTable, stripped);
  for await (const row of contents.unattached ?? []) writing.unattached.push(row);
  await writeRows(
    writing,
    unattachedTable,
    writing.unattached.map((row) => withoutNamesInside(row, leaveOut)),
  );
}

async function* mapped<Row>(rows: RowSource<Row> | undefined, change: (row: Row) => Row): AsyncGenerator<Row> {
  for await (const row of rows ?? []) yield change(row);
}
