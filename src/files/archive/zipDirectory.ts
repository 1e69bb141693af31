/**
 * The list of files at the end of a ZIP file, read and distrusted: names that lead elsewhere, files that lie over one another, sizes that
 * no compression reaches, and what this reader cannot read are refused before anything is unpacked.
 * Source: PKWARE's APPNOTE.TXT 6.3.10, sections 4.3.7, 4.3.12 and 4.3.16; ISO/IEC 21320-1.
 */
import type { ByteSource } from '../audio/byteSource.ts';
import { ArchiveFault, damaged } from './archiveFault.ts';
import { foldedPath, pathFault } from './safePath.ts';

export type ZipEntry = {
  readonly path: string;
  readonly isStored: boolean;
  readonly crc: number;
  readonly packedBytes: number;
  readonly byteCount: number;
  /** Where its own header begins. */
  readonly headerOffset: number;
};

/** Whatever the archive's own list says, no more than this is unpacked. */
export type UnpackLimits = { readonly mostBytes: number; readonly mostFileBytes: number };
/** Five hundred of the largest pictures, or years of readings of hundreds of instruments: chosen well above what one ZIP file holds in earnest. */
export const USUAL_LIMITS: UnpackLimits = { mostBytes: 32e9, mostFileBytes: 16e9 };

const END_BYTES = 22;
const LONGEST_COMMENT = 0xffff;
const ENTRY_BYTES = 46;
const LOCAL_BYTES = 30;

const END_MARK = 0x06054b50;
const ENTRY_MARK = 0x02014b50;
const LOCAL_MARK = 0x04034b50;

/** @throws {ArchiveFault} */
export async function readZipDirectory(source: ByteSource, limits: UnpackLimits = USUAL_LIMITS): Promise<ZipEntry[]> {
  const end = await readEnd(source);
  const view = viewOf(await source.read(end.offset, end.byteCount));
  if (view.byteLength !== end.byteCount) throw damaged(null, CUT_SHORT);
  const entries: ZipEntry[] = [];
  let at = 0;
  for (let index = 0; index < end.entryCount; index++) {
    const { entry, next } = readEntry(view, at);
    at = next;
    if (!entry.path.endsWith('/')) entries.push(entry);
    else if (entry.byteCount > 0) throw damaged(entry.path, 'is a folder that holds bytes');
  }
  if (at !== end.byteCount)
    throw damaged(null, 'the list of files at its end is longer than it says; copy the archive again');
  checkTogether(entries, end.offset, limits);
  return entries;
}

const CUT_SHORT = 'the archive is cut short or damaged at its end; copy it again from where it came from';

async function readEnd(source: ByteSource) {
  const length = Math.min(source.byteCount, END_BYTES + LONGEST_COMMENT);
  const start = source.byteCount - length;
  const tail = viewOf(await source.read(start, length));
  for (let at = tail.byteLength - END_BYTES; at >= 0; at--) {
    if (tail.getUint32(at, true) !== END_MARK || at + END_BYTES + tail.getUint16(at + 20, true) !== tail.byteLength)
      continue;
    return checkedEnd(tail, at, start + at);
  }
  throw await noEnd(source);
}

async function noEnd(source: ByteSource): Promise<ArchiveFault> {
  const head = await source.read(0, 4);
  const isZip = head.length === 4 && viewOf(head).getUint32(0, true) === LOCAL_MARK;
  if (isZip) return damaged(null, CUT_SHORT);
  const what = source.byteCount === 0 ? 'it is empty (0 bytes)' : 'it is not a ZIP file';
  const message = `${what}; an archive is a ZIP file with datapackage.json in it`;
  return new ArchiveFault('not-an-archive', { file: null, row: null, column: null, message });
}

function checkedEnd(tail: DataView, at: number, endOffset: number) {
  const entryCount = tail.getUint16(at + 10, true);
  const byteCount = tail.getUint32(at + 12, true);
  const offset = tail.getUint32(at + 16, true);
  if (entryCount === 0xffff || byteCount === 0xffffffff || offset === 0xffffffff)
    throw damaged(
      null,
      'it uses the extension of ZIP for more than 4 GB, which is not read; split it into smaller archives',
    );
  if (tail.getUint16(at + 4, true) !== 0 || tail.getUint16(at + 8, true) !== entryCount)
    throw damaged(null, 'it is one part of a ZIP file in several parts; put them together first');
  if (offset + byteCount !== endOffset) throw damaged(null, CUT_SHORT);
  return { entryCount, byteCount, offset };
}

const ENCRYPTED = 1;
const SYMBOLIC_LINK = 0xa000;

function readEntry(view: DataView, at: number): { entry: ZipEntry; next: number } {
  if (at + ENTRY_BYTES > view.byteLength || view.getUint32(at, true) !== ENTRY_MARK) throw damaged(null, CUT_SHORT);
  const [nameLength, extraLength, commentLength] = [28, 30, 32].map((offset) => view.getUint16(at + offset, true)) as [
    number,
    number,
    number,
  ];
  const next = at + ENTRY_BYTES + nameLength + extraLength + commentLength;
  if (next > view.byteLength) throw damaged(null, CUT_SHORT);
  const path = nameAt(view, at + ENTRY_BYTES, nameLength);
  const method = view.getUint16(at + 10, true);
  if (view.getUint16(at + 8, true) & ENCRYPTED)
    throw damaged(path, 'is encrypted; take the password off with another program');
  if (method !== 0 && method !== 8) throw damaged(path, `is compressed in a way that is not read (method ${method})`);
  const mode = view.getUint32(at + 38, true) >>> 16;
  if ((mode & 0xf000) === SYMBOLIC_LINK) throw damaged(path, 'is a link to another file and not a file');
  const entry: ZipEntry = {
    path,
    isStored: method === 0,
    crc: view.getUint32(at + 16, true),
    packedBytes: view.getUint32(at + 20, true),
    byteCount: view.getUint32(at + 24, true),
    headerOffset: view.getUint32(at + 42, true),
  };
  return { entry, next };
}

function nameAt(view: DataView, at: number, length: number): string {
  const bytes = new Uint8Array(view.buffer, view.byteOffset + at, length);
  let path: string;
  try {
    path = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    throw damaged(null, 'the name of a file in it is not UTF-8; pack the archive again');
  }
  const fault = pathFault(path);
  if (fault !== undefined)
    throw damaged(null, `there is ${fault} (${JSON.stringify(path.slice(0, 80))}); the archive is not to be trusted`);
  return path;
}

/** Deflate cannot pack more than this into one byte (its specification, RFC 1951: 258 bytes in two bits). */
const MOST_TIMES = 1032;
/** Figures pack to a third; a file of some size that packs beyond this holds nothing but repetition. */
const SUSPICIOUS_TIMES = 250;
const SUSPICIOUS_BYTES = 10e6;

function checkTogether(entries: readonly ZipEntry[], listOffset: number, limits: UnpackLimits): void {
  const seen = new Map<string, string>();
  let total = 0;
  for (const { path, byteCount, packedBytes, isStored } of entries) {
    const before = seen.get(foldedPath(path));
    if (before === path) throw damaged(path, 'stands in the archive twice');
    if (before !== undefined)
      throw damaged(path, `differs from ${before} in capital letters only, which many systems cannot tell apart`);
    seen.set(foldedPath(path), path);
    const isBomb =
      byteCount > packedBytes * MOST_TIMES ||
      (byteCount > SUSPICIOUS_BYTES && byteCount > packedBytes * SUSPICIOUS_TIMES);
    if (isStored ? byteCount !== packedBytes : isBomb)
      throw damaged(path, `says it unpacks from ${packedBytes} to ${byteCount} bytes, which is not to be believed`);
    total += byteCount;
    if (byteCount > limits.mostFileBytes || total > limits.mostBytes) throw tooMuch(path, limits);
  }
  checkPlaces(entries, listOffset);
}

function tooMuch(path: string, { mostBytes }: UnpackLimits): ArchiveFault {
  const message = `with it the archive unpacks to more than ${(mostBytes / 1e9).toFixed(0)} GB, which is not done`;
  return new ArchiveFault('too-large', { file: path, row: null, column: null, message });
}

function checkPlaces(entries: readonly ZipEntry[], listOffset: number): void {
  let end = 0;
  for (const { path, headerOffset, packedBytes } of [...entries].sort((a, b) => a.headerOffset - b.headerOffset)) {
    if (headerOffset < end)
      throw damaged(path, 'lies over another file in the archive; the archive is not to be trusted');
    end = headerOffset + LOCAL_BYTES + packedBytes;
    if (end > listOffset) throw damaged(path, 'reaches beyond the end of the files; the archive is damaged');
  }
}

/** Where the bytes of an entry begin. @throws {ArchiveFault} where its own header is another's */
export async function dataOffset(source: ByteSource, entry: ZipEntry): Promise<number> {
  const header = viewOf(await source.read(entry.headerOffset, LOCAL_BYTES));
  if (header.byteLength < LOCAL_BYTES || header.getUint32(0, true) !== LOCAL_MARK)
    throw damaged(entry.path, 'is not where the list of files says; the archive is damaged');
  const nameLength = header.getUint16(26, true);
  const name = await source.read(entry.headerOffset + LOCAL_BYTES, nameLength);
  if (new TextDecoder().decode(name) !== entry.path)
    throw damaged(entry.path, 'bears another name in its own place; the archive is not to be trusted');
  return entry.headerOffset + LOCAL_BYTES + nameLength + header.getUint16(28, true);
}

function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}
