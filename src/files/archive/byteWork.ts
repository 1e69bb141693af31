/**
 * The heavy work on the bytes of an archive: packing, unpacking and checksums. The libraries do it everywhere; where the platform has
 * means of its own these are faster.
 */
import { libraryDeflater, platformDeflater } from './deflater.ts';
import { createFileDigest, type FileDigest } from './fileDigest.ts';
import { libraryInflated, platformInflated } from './inflated.ts';
import { deflatingPacker, type OnPacked, type Packer } from './packer.ts';

export type ByteWork = {
  /** For a file that is to be compressed. */
  readonly createPacker: (onPacked: OnPacked) => Packer;
  /**
   * What raw deflate data unpacks to, piece by piece, none of them larger than some 30 MB.
   * What breaks off may just end early: whoever knows the size sees it.
   * @throws {UnpackFault} where it cannot be unpacked; and whatever the pieces throw
   */
  readonly inflated: (packed: AsyncIterable<Uint8Array>) => AsyncGenerator<Uint8Array>;
  readonly createDigest: (withSha256: boolean) => FileDigest;
};

/** What runs everywhere; asked for anew each time, since a test may take the platform's means away. */
export function usualByteWork(): ByteWork {
  const createDeflater = typeof CompressionStream === 'undefined' ? libraryDeflater : platformDeflater;
  return {
    createPacker: (onPacked) => deflatingPacker(createDeflater(onPacked), createFileDigest(true)),
    inflated: typeof DecompressionStream === 'undefined' ? libraryInflated : platformInflated,
    createDigest: createFileDigest,
  };
}
