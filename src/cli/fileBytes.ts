/** A file on disk as a source of bytes. */
import { type FileHandle, open } from 'node:fs/promises';
import type { ByteSource } from '../files/audio/byteSource.ts';
import { UsageFault } from './terminal.ts';

/**
 * Opens the file, lets `use` read from it and closes it again.
 * @throws {UsageFault} with one sentence that names the file, if it cannot be opened or read
 */
export async function withFileBytes<Result>(
  path: string,
  use: (source: ByteSource) => Promise<Result>,
): Promise<Result> {
  const handle = await open(path, 'r').catch((error: unknown) => {
    throw unreadable(path, error);
  });
  try {
    const status = await handle.stat();
    if (status.isDirectory()) throw new UsageFault(`cannot read ${path}: it is a folder; name a file in it`);
    if (!status.isFile()) throw new UsageFault(`cannot read ${path}: it is not an ordinary file`);
    return await use(handleAsSource(path, handle, status.size));
  } finally {
    await handle.close();
  }
}

function handleAsSource(path: string, handle: FileHandle, byteCount: number): ByteSource {
  return {
    byteCount,
    async read(offset, length) {
      const wanted = Math.max(0, Math.min(length, byteCount - offset));
      const bytes = new Uint8Array(wanted);
      let filled = 0;
      while (filled < wanted) {
        const { bytesRead } = await handle
          .read(bytes, filled, wanted - filled, offset + filled)
          .catch((error: unknown) => {
            throw unreadable(path, error);
          });
        if (bytesRead === 0) break;
        filled += bytesRead;
      }
      return bytes.subarray(0, filled);
    },
  };
}

/** In one sentence that names the file: the same for every command. */
export function unreadable(path: string, error: unknown): UsageFault {
  const code = (error as NodeJS.ErrnoException).code ?? 'unknown';
  return new UsageFault(`cannot read ${path}: ${REASONS[code] ?? `the system says ${code}`}`);
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file; check the name and the folder',
  ENOTDIR: 'a part of the path is a file and not a folder; check the name',
  EACCES: 'reading it is not permitted; check its access rights',
  EPERM: 'reading it is not permitted; check its access rights',
  EISDIR: 'it is a folder; name a file in it',
  ELOOP: 'its links lead in a circle',
  ENAMETOOLONG: 'its name is too long',
  EIO: 'the disk could not read it; copy it again from its source',
};
