/** Reads an archive from front to back, a few hundred rows at a time, checking everything on the way. */
import type { ByteSource } from '../audio/byteSource.ts';
import type { ArchiveBatch, ArchiveRowKind, LeftOut } from './archiveContents.ts';
import { ArchiveFault, type StopSignal, stopIfAsked } from './archiveFault.ts';
import { ARCHIVE_TABLES } from './archiveTables.ts';
import { type ByteWork, usualByteWork } from './byteWork.ts';
import { type DescribedFile, packageFiles, readDescription } from './packageDescription.ts';
import { singleReferences } from './parentIds.ts';
import { type Complain, createKnownIds } from './readRows.ts';
import { readBatches } from './readTables.ts';
import { readZipDirectory, type UnpackLimits, USUAL_LIMITS, type ZipEntry } from './zipDirectory.ts';

export type Archive = {
  /** ISO 8601; null where it does not say. */
  readonly createdAt: string | null;
  readonly programVersion: string;
  readonly leftOut: readonly LeftOut[];
  readonly byteCount: number;
  /** Of all files in it, as it states them. */
  readonly unpackedBytes: number;
  /** What is worth knowing and does not keep it from being read. */
  readonly warnings: readonly string[];
  /**
   * Everything in it, parents before children; may be asked for more than once. Rows that are wrong go to `complain`, else the first
   * one ends the reading.
   * @throws {ArchiveFault}
   */
  batches(options?: ReadOptions): AsyncGenerator<ArchiveBatch>;
};

export type ReadOptions = {
  readonly signal?: StopSignal;
  /** The share of the archive that has been read, from 0 to 1. */
  readonly onProgress?: (share: number) => void;
  /** Takes what is wrong, and the reading goes on without it. */
  readonly complain?: Complain;
  /** Only these; that what they refer to is there is then not checked. */
  readonly kinds?: readonly ArchiveRowKind[];
};

export type ArchiveOutcome =
  | { readonly opened: true; readonly archive: Archive }
  | { readonly opened: false; readonly fault: ArchiveFault };

export type OpenOptions = {
  readonly limits?: UnpackLimits | undefined;
  /** What unpacks it and works its checksums out; the usual means unless given. */
  readonly byteWork?: ByteWork | undefined;
};

/** Reads the list of files and the description, and nothing else yet. */
export async function openArchive(source: ByteSource, options: OpenOptions = {}): Promise<ArchiveOutcome> {
  try {
    return { opened: true, archive: await open(source, options) };
  } catch (error) {
    if (error instanceof ArchiveFault) return { opened: false, fault: error };
    throw error;
  }
}

async function open(
  source: ByteSource,
  { limits = USUAL_LIMITS, byteWork = usualByteWork() }: OpenOptions,
): Promise<Archive> {
  const entries = await readZipDirectory(source, limits);
  const { description: entry, files } = packageFiles(entries);
  const description = await readDescription({ source, byteWork }, entry);
  const tables = description.resources.filter(({ isTable }) => isTable);
  checkTables(tables, entry.path);
  const { createdAt, programVersion, leftOut } = description;
  const resources = new Map(description.resources.map((resource) => [resource.path, resource]));
  return {
    createdAt,
    programVersion,
    leftOut,
    byteCount: source.byteCount,
    unpackedBytes: entries.reduce((sum, { byteCount }) => sum + byteCount, 0),
    warnings: strangers(files, resources),
    batches: (options = {}) => {
      const complain = options.complain ?? throwComplaint;
      const { kinds } = options;
      const ids = createKnownIds(kinds === undefined ? singleReferences : () => []);
      const read = {
        byteWork,
        files,
        resources,
        ids,
        complain,
        named: new Set<string>(),
        isWanted: (kind: ArchiveRowKind) => kinds?.includes(kind) ?? true,
      };
      return stoppable(readBatches({ ...read, source: counted(source, files, options.onProgress) }), options.signal);
    },
  };
}

const throwComplaint: Complain = (complaint) => {
  throw new ArchiveFault('damaged', complaint);
};

function checkTables(tables: readonly DescribedFile[], file: string): void {
  const unknown = tables.find(({ name }) => !ARCHIVE_TABLES.some((spec) => spec.name === name));
  if (unknown === undefined) return;
  const message = `names a table that this program does not know (${JSON.stringify(unknown.name.slice(0, 80))}); read the archive with a newer program, or take the table out of it`;
  throw new ArchiveFault('damaged', { file, row: null, column: null, message });
}

function strangers(files: ReadonlyMap<string, ZipEntry>, resources: ReadonlyMap<string, DescribedFile>): string[] {
  const known = ['README.txt', 'datapackage.json'];
  return [...files.keys()]
    .filter((path) => !known.includes(path) && !resources.has(path))
    .map((path) => `${path} is not named in datapackage.json and was not read`);
}

async function* stoppable(
  batches: AsyncGenerator<ArchiveBatch>,
  signal: StopSignal | undefined,
): AsyncGenerator<ArchiveBatch> {
  stopIfAsked(signal);
  for await (const batch of batches) {
    yield batch;
    stopIfAsked(signal);
  }
}

/** Tells how much has been read of what there is to read. */
function counted(
  source: ByteSource,
  files: ReadonlyMap<string, ZipEntry>,
  onProgress: ((share: number) => void) | undefined,
): ByteSource {
  if (onProgress === undefined) return source;
  const all = [...files.values()].reduce((sum, { packedBytes }) => sum + packedBytes, 0);
  let readBytes = 0;
  return {
    byteCount: source.byteCount,
    async read(offset, length) {
      const bytes = await source.read(offset, length);
      readBytes += bytes.length;
      onProgress(Math.min(1, readBytes / Math.max(1, all)));
      return bytes;
    },
  };
}
