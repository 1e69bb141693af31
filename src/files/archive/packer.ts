/** One file of a ZIP file: its bytes in, packed bytes out, and at the end what the list of files says of it. */
import type { Deflater } from './deflater.ts';
import { createFileDigest, type Sha256 } from './fileDigest.ts';

export type PackedFacts = { readonly byteCount: number; readonly crc: number; readonly sha256: string };

export type Packer = {
  /** Takes the bytes over; resolves when the next ones may come. */
  push(bytes: Uint8Array<ArrayBuffer>): Promise<void>;
  finish(): Promise<PackedFacts>;
};

/** Takes what is packed so far; it is called no more once `finish` has resolved. */
export type OnPacked = (bytes: Uint8Array) => void;

type Means = { readonly createDeflater: (onBytes: OnPacked) => Deflater; readonly createSha256: () => Sha256 };

export function deflatingPacker({ createDeflater, createSha256 }: Means, onPacked: OnPacked): Packer {
  const digest = createFileDigest(createSha256());
  const deflater = createDeflater(onPacked);
  return {
    push(bytes) {
      digest.add(bytes);
      return deflater.push(bytes);
    },
    async finish() {
      await deflater.finish();
      return { byteCount: digest.byteCount(), crc: digest.crc(), sha256: digest.sha256() };
    },
  };
}

/** For what is compressed already: it is handed on as it is. */
export function storingPacker({ createSha256 }: Pick<Means, 'createSha256'>, onPacked: OnPacked): Packer {
  const digest = createFileDigest(createSha256());
  return {
    async push(bytes) {
      digest.add(bytes);
      onPacked(bytes);
    },
    finish: async () => ({ byteCount: digest.byteCount(), crc: digest.crc(), sha256: digest.sha256() }),
  };
}
