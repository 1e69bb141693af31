/** One file of a ZIP file: its bytes in, packed bytes out, and at the end what the list of files says of it. */
import type { Deflater } from './deflater.ts';
import type { DigestFacts, FileDigest, FileDigestHere } from './fileDigest.ts';

export type Packer = {
  /** Takes the bytes over; resolves when the next ones may come. */
  push(bytes: Uint8Array<ArrayBuffer>): Promise<void>;
  finish(): Promise<DigestFacts>;
};

/** Takes what is packed so far; it is called no more once `finish` has resolved. */
export type OnPacked = (bytes: Uint8Array) => void;

export function deflatingPacker(deflater: Deflater, digest: FileDigestHere): Packer {
  return {
    push(bytes) {
      digest.add(bytes);
      return deflater.push(bytes);
    },
    async finish() {
      await deflater.finish();
      return digest.facts();
    },
  };
}

/** For what is compressed already: it is handed on as it is. */
export function storingPacker(digest: FileDigest, onPacked: OnPacked): Packer {
  return {
    async push(bytes) {
      await digest.add(bytes);
      onPacked(bytes);
    },
    finish: async () => digest.facts(),
  };
}
