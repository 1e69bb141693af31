/** Packed bytes that wait in the browser's own store, on its disk where they are many. */
import type { Spool } from '../../files/archive/spool.ts';

/** Pieces are gathered to this size: fewer blobs, and memory stays small. */
const GATHERED_BYTES = 4e6;

export function blobSpool(): Spool {
  let blobs: Blob[] = [];
  let pieces: Uint8Array<ArrayBuffer>[] = [];
  let byteCount = 0;
  const gather = () => {
    if (byteCount > 0) blobs.push(new Blob(pieces));
    pieces = [];
    byteCount = 0;
  };
  return {
    async add(bytes) {
      pieces.push(bytes.slice());
      byteCount += bytes.length;
      if (byteCount >= GATHERED_BYTES) gather();
    },
    async *pieces() {
      gather();
      for (const blob of blobs) yield new Uint8Array(await blob.arrayBuffer());
    },
    async discard() {
      blobs = [];
      pieces = [];
    },
  };
}
