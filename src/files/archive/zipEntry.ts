/** The bytes of one file in a ZIP file, piece by piece, unpacked and compared with what the archive says of them. */
import type { ByteSource } from '../audio/byteSource.ts';
import { damaged } from './archiveFault.ts';
import type { ByteWork } from './byteWork.ts';
import type { DigestFacts } from './fileDigest.ts';
import { UnpackFault } from './inflated.ts';
import { dataOffset, type ZipEntry } from './zipDirectory.ts';

/** Read at once from the source. */
const READ_BYTES = 1 << 20;

export type Expected = { readonly sha256?: string | undefined; readonly byteCount?: number | undefined };

/** The archive's file, and what unpacks it. */
export type Packed = { readonly source: ByteSource; readonly byteWork: ByteWork };

/**
 * Nothing that comes out may be trusted before the end was reached: the checksums are compared there.
 * @throws {ArchiveFault}
 */
export async function* entryBytes(
  { source, byteWork }: Packed,
  entry: ZipEntry,
  expected: Expected = {},
): AsyncGenerator<Uint8Array> {
  const digest = byteWork.createDigest(expected.sha256 !== undefined);
  const packed = packedBytes(source, entry);
  let byteCount = 0;
  for await (const piece of entry.isStored ? packed : unpacked(entry, byteWork.inflated(packed))) {
    byteCount += piece.length;
    if (byteCount > entry.byteCount)
      throw damaged(entry.path, 'holds more than it says; the archive is not to be trusted');
    await digest.add(piece);
    yield piece;
  }
  check(entry, await digest.facts(), expected);
}

function check(entry: ZipEntry, { byteCount, crc, sha256 }: DigestFacts, expected: Expected): void {
  if (byteCount !== entry.byteCount)
    throw damaged(entry.path, `has ${byteCount} bytes and should have ${entry.byteCount}; ${COPY_AGAIN}`);
  if (crc !== entry.crc) throw damaged(entry.path, `does not match its checksum (CRC-32); ${COPY_AGAIN}`);
  if (expected.byteCount !== undefined && byteCount !== expected.byteCount)
    throw damaged(entry.path, `has ${byteCount} bytes, and datapackage.json says ${expected.byteCount}; ${CHANGED}`);
  if (expected.sha256 !== undefined && sha256 !== expected.sha256)
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

async function* unpacked({ path }: ZipEntry, pieces: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  try {
    yield* pieces;
  } catch (error) {
    if (!(error instanceof UnpackFault)) throw error;
    throw damaged(path, `cannot be unpacked; ${COPY_AGAIN}`);
  }
}

/** The whole file. @throws {ArchiveFault} also where it has more than `mostBytes` */
export async function readEntry(
  archive: Packed,
  entry: ZipEntry,
  mostBytes: number,
  expected: Expected = {},
): Promise<Uint8Array<ArrayBuffer>> {
  if (entry.byteCount > mostBytes)
    throw damaged(entry.path, `has ${entry.byteCount} bytes, and ${mostBytes} are the most`);
  const whole = new Uint8Array(entry.byteCount);
  let at = 0;
  for await (const piece of entryBytes(archive, entry, expected)) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}
