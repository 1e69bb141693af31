/** Sounds and pictures of several archives, each once, read only when they are written. */
import { createHash } from 'node:crypto';
import { stat } from 'node:fs/promises';
import type { ArchivedRival, ArchiveRows } from '../../files/archive/archiveContents.ts';
import { openArchive } from '../../files/archive/readArchive.ts';
import type { ByteSource } from '../../files/audio/byteSource.ts';
import { rivalRow } from '../../files/merge/recordTables.ts';
import { withFileBytes } from '../fileBytes.ts';
import { NODE_BYTE_WORK } from './nodeByteWork.ts';

type FileKind = 'sounds' | 'photographFiles';

export type MergedFiles = {
  sounds(): AsyncGenerator<ArchiveRows['sounds']>;
  photographFiles(): AsyncGenerator<ArchiveRows['photographFiles']>;
  /** To be asked for after the files: the given ones, and files that bear the id of another and are not the same. */
  rivals(known: readonly ArchivedRival[]): AsyncGenerator<ArchivedRival>;
};

export function createMergedFiles(sources: readonly string[]): MergedFiles {
  const found: ArchivedRival[] = [];
  async function* all<Kind extends FileKind>(kind: Kind): AsyncGenerator<ArchiveRows[Kind]> {
    const digests = new Map<string, string>();
    for (const source of sources)
      for await (const row of filesOf(source, kind)) {
        const digest = createHash('sha256').update(row.bytes).digest('hex');
        const before = digests.get(row.id);
        digests.set(row.id, before ?? digest);
        if (before === undefined) yield row;
        else if (before !== digest) found.push(rivalRow(kind, row, () => new Date().toISOString()));
      }
  }
  return {
    sounds: () => all('sounds'),
    photographFiles: () => all('photographFiles'),
    async *rivals(known) {
      yield* known;
      yield* found;
    },
  };
}

async function* filesOf<Kind extends FileKind>(file: string, kind: Kind): AsyncGenerator<ArchiveRows[Kind]> {
  const outcome = await openArchive(await fileSource(file), { byteWork: NODE_BYTE_WORK });
  if (!outcome.opened) throw outcome.fault;
  const kinds = [kind === 'sounds' ? ('sounds' as const) : ('photographs' as const)];
  for await (const batch of outcome.archive.batches({ kinds }))
    if (batch.kind === kind) yield* batch.rows as readonly ArchiveRows[Kind][];
}

/** Opens the file for each piece, so that nobody has to close it. */
async function fileSource(file: string): Promise<ByteSource> {
  const { size } = await stat(file);
  return { byteCount: size, read: (offset, length) => withFileBytes(file, (source) => source.read(offset, length)) };
}
