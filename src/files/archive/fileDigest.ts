/** Size, CRC-32 and SHA-256 of a file that is written or read piece by piece. */
import { sha256 } from '@noble/hashes/sha2.js';
import { crc32 } from './crc32.ts';
import { toHex } from './taggedJson.ts';

export type FileDigest = {
  add(bytes: Uint8Array): void;
  byteCount(): number;
  crc(): number;
  /** Hexadecimal digits; ends the digest. */
  sha256(): string;
};

/** @param withSha256 whether it will be asked for */
export function createFileDigest(withSha256: boolean): FileDigest {
  const hash = withSha256 ? sha256.create() : undefined;
  let crc = 0;
  let byteCount = 0;
  return {
    add(bytes) {
      byteCount += bytes.length;
      crc = crc32(bytes, crc);
      hash?.update(bytes);
    },
    byteCount: () => byteCount,
    crc: () => crc,
    sha256: () => (hash ? toHex(hash.digest()) : ''),
  };
}
