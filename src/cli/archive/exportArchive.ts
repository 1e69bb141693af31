/** `archive export FROM.zip --out FILE.zip`: a part of an archive into a new one. */

import type { ArchiveContents, LeftOut } from '../../files/archive/archiveContents.ts';
import { ArchiveFault } from '../../files/archive/archiveFault.ts';
import type { InstrumentInArchive } from '../../files/archive/checkArchive.ts';
import { openArchive } from '../../files/archive/readArchive.ts';
import { contentsOfArchive, someInstruments } from '../../files/archive/someInstruments.ts';
import { type WrittenArchive, writeArchive } from '../../files/archive/writeArchive.ts';
import { formatCount } from '../../piano/format.ts';
import { parseArguments } from '../commandOptions.ts';
import { withFileBytes } from '../fileBytes.ts';
import { type Terminal, UsageFault } from '../terminal.ts';
import { checkFile, firstComplaint } from './checkArchiveFile.ts';
import { fileSpools } from './fileSpool.ts';
import { NODE_BYTE_WORK } from './nodeByteWork.ts';
import { programVersion } from './programVersion.ts';
import { mustBeNew, writeWhole } from './writeNewFile.ts';

const LEAVE_OUT: readonly LeftOut[] = ['owners', 'visitors', 'sounds', 'photographs'];

export async function exportArchive(args: readonly string[], terminal: Terminal): Promise<number> {
  const { from, out, names, leaveOut } = readArguments(args);
  await mustBeNew(out);
  const report = await checkFile(from, terminal);
  if (!report.isWhole) throw new UsageFault(`${from} is not whole: ${firstComplaint(report)}`);
  const ids = names.length === 0 ? null : new Set(names.map((name) => idOf(name, report.instruments, from)));
  const written = await withFileBytes(from, async (source) => {
    const outcome = await openArchive(source, { byteWork: NODE_BYTE_WORK });
    if (!outcome.opened) throw new UsageFault(`${from}: ${outcome.fault.message}`);
    const all = contentsOfArchive(outcome.archive);
    const both = [...new Set([...leaveOut, ...outcome.archive.leftOut])];
    return writeFile(out, ids === null ? all : someInstruments(all, ids), both, terminal);
  });
  terminal.print(exportedText(out, written));
  return 0;
}

function readArguments(args: readonly string[]) {
  const { files, values } = parseArguments(args, {
    out: { type: 'string' },
    instrument: { type: 'string', multiple: true },
    ...Object.fromEntries(LEAVE_OUT.map((what) => [`without-${what}`, { type: 'boolean' as const }])),
  });
  const [from] = files;
  if (from === undefined || files.length > 1)
    throw new UsageFault(`archive export takes one FROM.zip, got ${files.length}; archive --help explains it`);
  if (typeof values.out !== 'string' || values.out === '')
    throw new UsageFault('archive export needs --out FILE.zip, the file to be written');
  const names: unknown = values.instrument ?? [];
  return {
    from,
    out: values.out,
    names: Array.isArray(names) ? names.map(String) : [String(names)],
    leaveOut: LEAVE_OUT.filter((what) => values[`without-${what}`] === true),
  };
}

function idOf(name: string, instruments: readonly InstrumentInArchive[], file: string): string {
  const wanted = name.trim().toLowerCase();
  const found = instruments.filter((one) => one.id === name || one.name.trim().toLowerCase() === wanted);
  const [only, ...others] = found;
  if (only === undefined) {
    const known = instruments.map((one) => one.name || one.id).join(', ');
    throw new UsageFault(`there is no instrument "${name}" in ${file}; there are ${known || 'none'}`);
  }
  if (others.length === 0) return only.id;
  const ids = found.map(({ id }) => id).join(', ');
  throw new UsageFault(`${found.length} instruments in ${file} are called "${name}"; name one by its id: ${ids}`);
}

export function writeFile(
  path: string,
  contents: ArchiveContents,
  leaveOut: readonly LeftOut[],
  terminal: Terminal,
): Promise<WrittenArchive> {
  const options = {
    createdAt: new Date().toISOString(),
    programVersion: programVersion(),
    leaveOut,
    byteWork: NODE_BYTE_WORK,
    createSpool: fileSpools(path),
    onProgress: ({ table, rowCount }: { table: string; rowCount: number }) =>
      terminal.progress(`${table}: ${rowCount} written`),
  };
  return writeWhole(path, async (add) => {
    try {
      return await writeArchive(contents, options, add);
    } catch (error) {
      if (error instanceof ArchiveFault) throw new UsageFault(`${path} was not written: ${error.message}`);
      throw error;
    }
  }).finally(() => terminal.endProgress());
}

export function exportedText(path: string, { rowCounts, soundCount, photographCount }: WrittenArchive): string {
  return [
    `${path}: ${formatCount(rowCounts.instruments ?? 0, 'instrument', 'instruments')}`,
    formatCount(rowCounts.visits ?? 0, 'visit', 'visits'),
    formatCount(rowCounts.readings ?? 0, 'take', 'takes'),
    formatCount(soundCount, 'clip', 'clips'),
    formatCount(photographCount, 'photograph', 'photographs'),
  ].join(', ');
}
