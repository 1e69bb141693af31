/** Sounds and pictures: the row of the table and the file that it names, one at a time. */

import type { ArchiveBatch } from './archiveContents.ts';
import { ArchiveFault } from './archiveFault.ts';
import type { ArchiveReading } from './archiveReading.ts';
import type { ReadRow } from './readRows.ts';
import { readEntry } from './zipEntry.ts';

/** More than a minute of sound in 24 bits, or a picture beyond any camera: chosen so that one file never fills the memory. */
const MOST_FILE_BYTES = 256e6;

export type FileKind = 'sounds' | 'photographs';

export async function* readFileRows(
  reading: ArchiveReading,
  kind: FileKind,
  rows: readonly ReadRow[],
): AsyncGenerator<ArchiveBatch> {
  for (const read of rows) {
    const { path, ...fields } = read.row;
    if (kind === 'photographs') yield { kind, rows: [fields] } as unknown as ArchiveBatch;
    if (path === null && kind === 'photographs') continue;
    const bytes = await fileBytes(reading, kind, String(path), read.number);
    if (bytes === undefined) continue;
    if (kind === 'sounds') yield { kind, rows: [{ ...fields, bytes }] } as unknown as ArchiveBatch;
    else {
      const file = { id: fields.id, instrumentId: fields.instrumentId, bytes };
      yield { kind: 'photographFiles', rows: [file] } as unknown as ArchiveBatch;
    }
  }
}

async function fileBytes(reading: ArchiveReading, kind: string, path: string, row: number) {
  const { files, resources, named, complain } = reading;
  const entry = path.startsWith(`${kind}/`) ? files.get(path) : undefined;
  if (entry === undefined) {
    const message = `names ${JSON.stringify(path.slice(0, 80))}, which is not a file in the folder ${kind} of this archive`;
    complain({ file: `${kind}.csv`, row, column: 'path', message });
    return undefined;
  }
  named.add(path);
  try {
    const bytes = await readEntry(reading, entry, MOST_FILE_BYTES, resources.get(path)?.expected);
    if (isOfItsKind(path, bytes)) return bytes;
    complain({ file: path, row: null, column: null, message: 'does not begin as a file of its kind does' });
  } catch (error) {
    if (!(error instanceof ArchiveFault) || error.reason !== 'damaged') throw error;
    complain(error.complaint);
  }
  return undefined;
}

/** First bytes of each format, from its specification. */
const BEGINNINGS: Readonly<Record<string, readonly number[]>> = {
  flac: [0x66, 0x4c, 0x61, 0x43],
  jpg: [0xff, 0xd8, 0xff],
  png: [0x89, 0x50, 0x4e, 0x47],
  webp: [0x52, 0x49, 0x46, 0x46],
};

function isOfItsKind(path: string, bytes: Uint8Array): boolean {
  const beginning = BEGINNINGS[path.slice(path.lastIndexOf('.') + 1)];
  return beginning === undefined || beginning.every((byte, index) => bytes[index] === byte);
}
