/** `archive import FILE.zip… --into RECORDS.zip`: several archives together, whole or not at all. */

import type { LeftOut } from '../../files/archive/archiveContents.ts';
import { ArchiveFault } from '../../files/archive/archiveFault.ts';
import { openArchive } from '../../files/archive/readArchive.ts';
import { mergeTables, NO_RECORDS, type RecordTables } from '../../files/merge/recordTables.ts';
import { contentsOfTables, tablesOfArchive } from '../../files/merge/tablesOfArchive.ts';
import { formatCount } from '../../piano/format.ts';
import { parseArguments } from '../commandOptions.ts';
import { withFileBytes } from '../fileBytes.ts';
import { type Terminal, UsageFault } from '../terminal.ts';
import { checkFile, firstComplaint } from './checkArchiveFile.ts';
import { exportedText, writeFile } from './exportArchive.ts';
import { createMergedFiles, type MergedFiles } from './mergedFiles.ts';
import { NODE_BYTE_WORK } from './nodeByteWork.ts';
import { isThere } from './writeNewFile.ts';

export async function importArchives(args: readonly string[], terminal: Terminal): Promise<number> {
  const { files, into, wantsJson } = readArguments(args);
  const sources = (await isThere(into)) ? [into, ...files] : files;
  for (const file of sources) await mustBeWhole(file, terminal);
  const { tables, leftOut } = await mergeFiles(sources, terminal);
  const written = await writeFile(into, contentsOf(tables, createMergedFiles(sources)), leftOut, terminal);
  const document = { file: into, from: files, ...written, rivals: written.rowCounts.rivals ?? 0 };
  terminal.print(wantsJson ? JSON.stringify(document, null, 2) : importedText(into, document));
  return 0;
}

type ReadTables = { readonly tables: RecordTables; readonly leftOut: readonly LeftOut[] };

/** Archives that left nothing out come first: the others take from them what they lack. */
async function mergeFiles(sources: readonly string[], terminal: Terminal): Promise<ReadTables> {
  const now = new Date().toISOString();
  const all: ReadTables[] = [];
  for (const file of sources) {
    terminal.progress(`${file}: merging`);
    all.push(await readTables(file));
  }
  const [first, ...others] = all.sort((one, other) => one.leftOut.length - other.leftOut.length);
  let { tables, leftOut }: ReadTables = first ?? { tables: NO_RECORDS, leftOut: [] };
  for (const theirs of others) {
    tables = mergeTables(tables, theirs.tables, { now, leftOut: theirs.leftOut });
    leftOut = leftOut.filter((what) => theirs.leftOut.includes(what));
  }
  return { tables, leftOut };
}

function readArguments(args: readonly string[]) {
  const { files, values } = parseArguments(args, { into: { type: 'string' }, json: { type: 'boolean' } });
  if (files.length === 0)
    throw new UsageFault('archive import needs at least one FILE.zip; archive --help explains it');
  if (typeof values.into !== 'string' || values.into === '')
    throw new UsageFault('archive import needs --into RECORDS.zip, the file that the others are merged into');
  const { into } = values;
  if (files.includes(into))
    throw new UsageFault(`${into} cannot be merged into itself; name the other archives before --into`);
  return { files, into, wantsJson: values.json === true };
}

async function mustBeWhole(file: string, terminal: Terminal): Promise<void> {
  const report = await checkFile(file, terminal);
  if (!report.isWhole) throw new UsageFault(`nothing was changed: ${file} is not whole: ${firstComplaint(report)}`);
}

function readTables(file: string): Promise<ReadTables> {
  return withFileBytes(file, async (source) => {
    const outcome = await openArchive(source, { byteWork: NODE_BYTE_WORK });
    if (!outcome.opened) throw new UsageFault(`${file}: ${outcome.fault.message}`);
    try {
      return { tables: await tablesOfArchive(outcome.archive), leftOut: outcome.archive.leftOut };
    } catch (error) {
      if (error instanceof ArchiveFault) throw new UsageFault(`${file} changed while it was read: ${error.message}`);
      throw error;
    }
  });
}

function contentsOf(merged: RecordTables, { sounds, photographFiles, rivals }: MergedFiles) {
  const contents = contentsOfTables(merged);
  return { ...contents, sounds: sounds(), photographFiles: photographFiles(), rivals: rivals(merged.rivals) };
}

function importedText(
  into: string,
  document: Parameters<typeof exportedText>[1] & { readonly rivals: number },
): string {
  const { rivals } = document;
  const choice =
    rivals === 0
      ? []
      : [`${formatCount(rivals, 'row was', 'rows were')} changed apart: both versions are kept (table rivals)`];
  return [exportedText(into, document), ...choice].join('\n');
}
