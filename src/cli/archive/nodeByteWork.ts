/** Packing, unpacking and checksums by Node's own means: several times as fast as the libraries, and on a thread of its own. */
import { createHash } from 'node:crypto';
import { pipeline, Readable } from 'node:stream';
import { crc32, createDeflateRaw, createInflateRaw } from 'node:zlib';
import type { ByteWork } from '../../files/archive/byteWork.ts';
import type { Deflater } from '../../files/archive/deflater.ts';
import { createFileDigest } from '../../files/archive/fileDigest.ts';
import { UnpackFault } from '../../files/archive/inflated.ts';
import { deflatingPacker } from '../../files/archive/packer.ts';

export const NODE_BYTE_WORK: ByteWork = {
  createPacker: (onPacked) => deflatingPacker(createDeflater(onPacked), createDigest(true)),
  inflated,
  createDigest,
};

/** Figures pack to the same third at every level, and the lowest is by far the fastest. */
const LEVEL = 1;
const CHUNK_BYTES = 1 << 17;

function createDeflater(onBytes: (bytes: Uint8Array) => void): Deflater {
  const stream = createDeflateRaw({ level: LEVEL, chunkSize: CHUNK_BYTES });
  stream.on('data', onBytes);
  stream.on('error', () => undefined); // told to whoever writes or waits for the end
  let writing: Promise<void> = Promise.resolve();
  return {
    push(bytes) {
      const before = writing; // while this piece is packed the next one is made
      writing = new Promise((resolve, reject) => stream.write(bytes, (error) => (error ? reject(error) : resolve())));
      writing.catch(() => undefined); // told to whoever comes next
      return before;
    },
    finish: () =>
      new Promise((resolve, reject) => {
        stream.once('end', resolve);
        stream.once('error', reject);
        stream.end();
      }),
  };
}

async function* inflated(packed: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  const stream = createInflateRaw({ chunkSize: CHUNK_BYTES });
  pipeline(Readable.from(packed), stream, () => undefined); // its faults come out of the stream itself
  try {
    for await (const piece of stream) yield piece as Uint8Array;
  } catch (cause) {
    const isOfData = cause instanceof Error && 'code' in cause && String(cause.code).startsWith('Z_');
    throw isOfData ? new UnpackFault('the data is damaged or breaks off', { cause }) : cause;
  }
}

function createDigest(withSha256: boolean) {
  return createFileDigest(withSha256, { createSha256, crc32 });
}

function createSha256() {
  const hash = createHash('sha256');
  return { update: (bytes: Uint8Array) => void hash.update(bytes), digest: () => hash.digest('hex') };
}
