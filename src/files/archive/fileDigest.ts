/** Size, CRC-32 and SHA-256 of a file that is written or read piece by piece. */
import { sha256 } from '@noble/hashes/sha2.js';
import { crc32 } from './crc32.ts';
import { toHex } from './taggedJson.ts';

export type Sha256 = {
  update(bytes: Uint8Array): void;
  /** Hexadecimal digits; ends it. */
  digest(): string;
};

export function librarySha256(): Sha256 {
  const hash = sha256.create();
  return { update: (bytes) => void hash.update(bytes), digest: () => toHex(hash.digest()) };
}

export type FileDigest = {
  add(bytes: Uint8Array): void;
  byteCount(): number;
  crc(): number;
  /** Hexadecimal digits; ends the digest. */
  sha256(): string;
};

/** @param hash undefined where the SHA-256 will not be asked for */
export function createFileDigest(hash: Sha256 | undefined): FileDigest {
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
    sha256: () => hash?.digest() ?? '',
  };
}
