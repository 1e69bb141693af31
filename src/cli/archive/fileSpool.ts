/** Packed bytes that wait in a file beside the one that is being written. */
import { type FileHandle, open, rm } from 'node:fs/promises';
import type { Spool } from '../../files/archive/spool.ts';
import { unwritable } from './writeNewFile.ts';

const PIECE_BYTES = 1 << 20;

/** @param beside the file that is being written: the others get its name with a number, and go with `discard` */
export function fileSpools(beside: string): () => Spool {
  let count = 0;
  return () => {
    count += 1;
    return fileSpool(`${beside}.part-${count}`);
  };
}

function fileSpool(path: string): Spool {
  let handle: FileHandle | undefined;
  const told = (error: unknown) => {
    throw unwritable(path, error);
  };
  return {
    async add(bytes) {
      handle ??= await open(path, 'w+').catch(told);
      for (let at = 0; at < bytes.length; ) at += (await handle.write(bytes, at).catch(told)).bytesWritten;
    },
    async *pieces() {
      for (let at = 0; handle; ) {
        const { buffer, bytesRead } = await handle.read(new Uint8Array(PIECE_BYTES), 0, PIECE_BYTES, at);
        if (bytesRead === 0) return;
        at += bytesRead;
        yield buffer.subarray(0, bytesRead);
      }
    },
    async discard() {
      if (!handle) return;
      await handle.close();
      handle = undefined;
      await rm(path, { force: true });
    },
  };
}
