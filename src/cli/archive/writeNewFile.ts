/** Writing a file so that it is there whole or not at all. */
import { type FileHandle, open, rename, rm, stat } from 'node:fs/promises';
import { UsageFault } from '../terminal.ts';

/**
 * Writes beside the file first and gives it its name at the end; what was there before is replaced only then.
 * @throws {UsageFault} where the folder cannot be written to
 */
export async function writeWhole<Result>(
  path: string,
  write: (add: (bytes: Uint8Array) => Promise<void>) => Promise<Result>,
): Promise<Result> {
  const unfinished = `${path}.part`;
  const handle = await open(unfinished, 'w').catch((error: unknown) => {
    throw unwritable(path, error);
  });
  try {
    const result = await write((bytes) => writeAll(handle, bytes, path));
    await handle.sync();
    await handle.close();
    await rename(unfinished, path);
    return result;
  } catch (error) {
    await handle.close();
    await rm(unfinished, { force: true });
    throw error;
  }
}

async function writeAll(handle: FileHandle, bytes: Uint8Array, path: string): Promise<void> {
  try {
    for (let at = 0; at < bytes.length; ) at += (await handle.write(bytes, at)).bytesWritten;
  } catch (error) {
    throw unwritable(path, error);
  }
}

/** @throws {UsageFault} where a file of that name is there already */
export async function mustBeNew(path: string): Promise<void> {
  if (await isThere(path)) throw new UsageFault(`${path} is there already; give another name, or move it away first`);
}

export async function isThere(path: string): Promise<boolean> {
  try {
    await stat(path);
    return true;
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT' || code === 'ENOTDIR') return false;
    throw unwritable(path, error);
  }
}

/** In one sentence that names the file: the same for every command. */
export function unwritable(path: string, error: unknown): UsageFault {
  const code = (error as NodeJS.ErrnoException).code ?? 'unknown';
  return new UsageFault(`cannot write ${path}: ${REASONS[code] ?? `the system says ${code}`}`);
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such folder; make it first, or check the name',
  ENOTDIR: 'a part of the path is a file and not a folder; check the name',
  EACCES: 'writing there is not permitted; check its access rights',
  EPERM: 'writing there is not permitted; check its access rights',
  EROFS: 'writing there is not permitted; it is read-only',
  EISDIR: 'it is a folder; name a file in it',
  ENOSPC: 'the disk is full; make room and try again',
  EDQUOT: 'the disk is full; make room and try again',
  ENAMETOOLONG: 'its name is too long',
};
