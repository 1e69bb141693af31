import { deflateRawSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { NODE_BYTE_WORK } from '../../../src/cli/archive/nodeByteWork.ts';
import { usualByteWork } from '../../../src/files/archive/byteWork.ts';
import { libraryInflated, platformInflated, UnpackFault } from '../../../src/files/archive/inflated.ts';
import { seededRandom } from '../../support/seededRandom.ts';

const { uniform } = seededRandom(20_260_403);
const bytes = Uint8Array.from({ length: 700_000 }, () => 48 + Math.floor(10 * uniform()));
const packed = new Uint8Array(deflateRawSync(bytes));

async function* inPieces(whole: Uint8Array, size = 100_000): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < whole.length; at += size) yield whole.slice(at, at + size);
}

async function joined(pieces: AsyncIterable<Uint8Array>): Promise<Buffer> {
  const all: Uint8Array[] = [];
  for await (const piece of pieces) all.push(piece);
  return Buffer.concat(all);
}

const INFLATERS = [
  { name: 'Node', inflated: NODE_BYTE_WORK.inflated },
  { name: 'the platform', inflated: platformInflated },
  { name: 'the library', inflated: libraryInflated },
];

describe.each(INFLATERS)('unpacking by $name', ({ inflated }) => {
  it('gives the bytes back', async () => {
    expect((await joined(inflated(inPieces(packed)))).equals(bytes)).toBe(true);
  });

  it('refuses nonsense, and never takes what breaks off for the whole', async () => {
    const broken = await joined(inflated(inPieces(packed.slice(0, -9)))).catch((fault: unknown) => fault);
    if (broken instanceof Buffer) expect(broken.length).toBeLessThan(bytes.length);
    else expect(broken).toBeInstanceOf(UnpackFault);
    await expect(joined(inflated(inPieces(Uint8Array.of(7, 7, 7, 7))))).rejects.toThrow(UnpackFault);
  });

  it('hands on what its source says', async () => {
    const gone = new Error('the disk is gone');
    async function* failing() {
      yield packed.slice(0, 1000);
      throw gone;
    }
    await expect(joined(inflated(failing()))).rejects.toBe(gone);
  });

  it('lets its source go when nobody wants more', async () => {
    let isLetGo = false;
    async function* source() {
      try {
        yield* inPieces(packed);
      } finally {
        isLetGo = true;
      }
    }
    for await (const piece of inflated(source())) if (piece.length > 0) break;
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(isLetGo).toBe(true);
  });
});

it('packs and reckons as the usual means do', async () => {
  for (const { createPacker } of [NODE_BYTE_WORK, usualByteWork()]) {
    const pieces: Uint8Array[] = [];
    const packer = createPacker((piece) => void pieces.push(piece));
    for await (const piece of inPieces(bytes)) await packer.push(piece as Uint8Array<ArrayBuffer>);
    expect(await packer.finish()).toMatchObject({ byteCount: bytes.length, crc: expect.any(Number) });
    expect((await joined(NODE_BYTE_WORK.inflated(inPieces(Buffer.concat(pieces))))).equals(bytes)).toBe(true);
  }
});
