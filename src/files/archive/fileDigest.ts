/** Size, CRC-32 and SHA-256 of a file that is written or read piece by piece. */
import { sha256 } from '@noble/hashes/sha2.js';
import { crc32 } from './crc32.ts';
import { toHex } from './taggedJson.ts';

export type DigestFacts = {
  readonly byteCount: number;
  readonly crc: number;
  /** Hexadecimal digits; empty where it was not asked for. */
  readonly sha256: string;
};

export type FileDigest = {
  /** The bytes stay the caller's. Where a promise comes back, the next ones may come when it resolves. */
  add(bytes: Uint8Array): void | Promise<void>;
  /** Ends the digest. */
  facts(): DigestFacts | Promise<DigestFacts>;
};

export type Sha256 = { update(bytes: Uint8Array): void; digest(): string };
export type Crc32 = (bytes: Uint8Array, before?: number) => number;
type Means = { readonly createSha256: () => Sha256; readonly crc32: Crc32 };

const LIBRARY: Means = {
  createSha256() {
    const hash = sha256.create();
    return { update: (bytes) => void hash.update(bytes), digest: () => toHex(hash.digest()) };
  },
  crc32,
};

/** A digest whose work is done where it is called. */
export type FileDigestHere = FileDigest & { add(bytes: Uint8Array): void; facts(): DigestFacts };

/** @param withSha256 whether it will be asked for */
export function createFileDigest(withSha256: boolean, means: Means = LIBRARY): FileDigestHere {
  const hash = withSha256 ? means.createSha256() : undefined;
  let crc = 0;
  let byteCount = 0;
  return {
    add(bytes) {
      byteCount += bytes.length;
      crc = means.crc32(bytes, crc);
      hash?.update(bytes);
    },
    facts: () => ({ byteCount, crc, sha256: hash?.digest() ?? '' }),
  };
}
