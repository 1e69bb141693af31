/** Where bytes come from, read piece by piece: a file on disk, a file in the browser, or bytes at hand. */
export type ByteSource = {
  readonly byteCount: number;
  /** The bytes from `offset` on; fewer than `length` where the source ends before. Never more. */
  read(offset: number, length: number): Promise<Uint8Array>;
};

/** @example (await bytesAsSource(Uint8Array.of(1, 2, 3)).read(1, 9)).length // 2 */
export function bytesAsSource(bytes: Uint8Array): ByteSource {
  return {
    byteCount: bytes.length,
    read: (offset, length) => Promise.resolve(bytes.subarray(offset, offset + length)),
  };
}
