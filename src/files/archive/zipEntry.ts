/** The bytes of one file in a ZIP file, piece by piece, unpacked and compared with what the archive says of them. */
import { Inflate } from 'fflate';
import type { ByteSource } from '../audio/byteSource.ts';
import { damaged } from './archiveFault.ts';
import { createFileDigest, type FileDigest } from './fileDigest.ts';
import { dataOffset, type ZipEntry } from './zipDirectory.ts';

/** Small enough that even a piece of pure repetition unpacks to some 30 MB. */
const PIECE_BYTES = 1 << 15;
/** Read at once from the source. */
const READ_BYTES = 1 << 20;

export type Expected = { readonly sha256?: string | undefined; readonly byteCount?: number | undefined };

/**
 * Nothing that comes out may be trusted before the end was reached: the checksums are compared there.
 * @throws {ArchiveFault}
 */
export async function* entryBytes(
  source: ByteSource,
  entry: ZipEntry,
  expected: Expected = {},
): AsyncGenerator<Uint8Array> {
  const digest = createFileDigest(expected.sha256 !== undefined);
  const pieces = entry.isStored ? packedBytes(source, entry) : unpacked(source, entry);
  for await (const piece of pieces) {
    digest.add(piece);
    if (digest.byteCount() > entry.byteCount)
      throw damaged(entry.path, 'holds more than it says; the archive is not to be trusted');
    yield piece;
  }
  check(entry, digest, expected);
}

function check(entry: ZipEntry, digest: FileDigest, expected: Expected): void {
  const byteCount = digest.byteCount();
  if (byteCount !== entry.byteCount)
    throw damaged(entry.path, `has ${byteCount} bytes and should have ${entry.byteCount}; ${COPY_AGAIN}`);
  if (digest.crc() !== entry.crc) throw damaged(entry.path, `does not match its checksum (CRC-32); ${COPY_AGAIN}`);
  if (expected.byteCount !== undefined && byteCount !== expected.byteCount)
    throw damaged(entry.path, `has ${byteCount} bytes, and datapackage.json says ${expected.byteCount}; ${CHANGED}`);
  if (expected.sha256 !== undefined && digest.sha256() !== expected.sha256)
    throw damaged(entry.path, `does not match its checksum (SHA-256) in datapackage.json; ${CHANGED}`);
}

const COPY_AGAIN = 'the archive is damaged: copy it again from where it came from';
const CHANGED =
  'it was changed since the archive was written. If the change is meant, take hash and bytes of this file out of datapackage.json';

async function* packedBytes(source: ByteSource, entry: ZipEntry): AsyncGenerator<Uint8Array> {
  const start = await dataOffset(source, entry);
  for (let at = 0; at < entry.packedBytes; ) {
    const piece = await source.read(start + at, Math.min(READ_BYTES, entry.packedBytes - at));
    if (piece.length === 0) throw damaged(entry.path, `breaks off; ${COPY_AGAIN}`);
    at += piece.length;
    yield piece;
  }
}

async function* unpacked(source: ByteSource, entry: ZipEntry): AsyncGenerator<Uint8Array> {
  let ready: Uint8Array[] = [];
  let isWhole = false;
  const inflate = new Inflate((bytes, isLast) => {
    if (bytes.length > 0) ready.push(bytes);
    isWhole ||= isLast;
  });
  const push = (bytes: Uint8Array, isLast: boolean) => {
    try {
      inflate.push(bytes as Uint8Array<ArrayBuffer>, isLast);
    } catch {
      throw damaged(entry.path, `cannot be unpacked; ${COPY_AGAIN}`);
    }
    const pieces = ready;
    ready = [];
    return pieces;
  };
  for await (const packed of packedBytes(source, entry))
    for (let at = 0; at < packed.length; at += PIECE_BYTES) yield* push(packed.subarray(at, at + PIECE_BYTES), false);
  yield* push(new Uint8Array(0), true);
  if (!isWhole) throw damaged(entry.path, `breaks off; ${COPY_AGAIN}`);
}

/** The whole file. @throws {ArchiveFault} also where it has more than `mostBytes` */
export async function readEntry(
  source: ByteSource,
  entry: ZipEntry,
  mostBytes: number,
  expected: Expected = {},
): Promise<Uint8Array<ArrayBuffer>> {
  if (entry.byteCount > mostBytes)
    throw damaged(entry.path, `has ${entry.byteCount} bytes, and ${mostBytes} are the most`);
  const whole = new Uint8Array(entry.byteCount);
  let at = 0;
  for await (const piece of entryBytes(source, entry, expected)) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}
