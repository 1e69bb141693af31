import type { ByteSource } from '../../files/audio/byteSource.ts';

/** A file that somebody chose, read piece by piece. */
export function fileSource(file: Blob): ByteSource {
  return {
    byteCount: file.size,
    read: async (offset, length) => new Uint8Array(await file.slice(offset, offset + length).arrayBuffer()),
  };
}
