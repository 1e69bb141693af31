/** ZIP files written byte by byte, so that they can say what no writer would. */
import { deflateSync, unzipSync } from 'fflate';
import { crc32 } from '../../../src/files/archive/crc32.ts';
import { bytesOf, u16, u32 } from '../../support/handWrittenBytes.ts';

export type HandEntry = {
  readonly name: string | Uint8Array;
  readonly data: string | Uint8Array;
  /** What the list at the end claims where it is not the truth. */
  readonly claims?: Partial<
    Record<'crc' | 'packedBytes' | 'byteCount' | 'method' | 'flags' | 'mode' | 'headerOffset', number>
  >;
  /** In the entry's own place, where that is another. */
  readonly localName?: string;
  readonly isStored?: boolean;
};

export type EndClaims = Partial<Record<'entryCount' | 'diskNumber' | 'listOffset' | 'listBytes', number>>;

const utf8 = new TextEncoder();
const asBytes = (data: string | Uint8Array) => (typeof data === 'string' ? utf8.encode(data) : data);

export function handZip(entries: readonly HandEntry[], end: EndClaims = {}): Uint8Array<ArrayBuffer> {
  const files: Uint8Array[] = [];
  const list: Uint8Array[] = [];
  let offset = 0;
  for (const { name, data, claims = {}, localName, isStored = false } of entries) {
    const [bytes, nameBytes, localBytes] = [asBytes(data), asBytes(name), asBytes(localName ?? name)];
    const packed = isStored ? bytes : deflateSync(bytes);
    const facts = {
      crc: crc32(bytes),
      packedBytes: packed.length,
      byteCount: bytes.length,
      method: isStored ? 0 : 8,
      flags: 0,
      mode: 0o100644,
      headerOffset: offset,
      ...claims,
    };
    const common = [
      ...u16(20),
      ...u16(facts.flags),
      ...u16(facts.method),
      ...u32(0x5c210000),
      ...u32(facts.crc),
      ...u32(facts.packedBytes),
      ...u32(facts.byteCount),
    ];
    const file = joined(bytesOf('PK\x03\x04', common, u16(localBytes.length), u16(0)), localBytes, packed);
    list.push(
      joined(
        bytesOf(
          'PK\x01\x02',
          u16(0x031e),
          common,
          u16(nameBytes.length),
          u16(0),
          u16(0),
          u16(0),
          u16(0),
          u32(facts.mode * 65536),
          u32(facts.headerOffset),
        ),
        nameBytes,
      ),
    );
    files.push(file);
    offset += file.length;
  }
  const directory = joined(...list);
  const { entryCount = entries.length, diskNumber = 0, listOffset = offset, listBytes = directory.length } = end;
  const tail = bytesOf(
    'PK\x05\x06',
    u16(diskNumber),
    u16(diskNumber),
    u16(entryCount),
    u16(entryCount),
    u32(listBytes),
    u32(listOffset),
    u16(0),
  );
  return joined(...files, directory, tail);
}

export function joined(...pieces: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}

/** What is in an archive, each file as text, sounds and pictures as bytes. */
export type LooseFiles = Map<string, string | Uint8Array>;

export function looseFiles(archive: Uint8Array): LooseFiles {
  const files = unzipSync(archive);
  const isText = (name: string) => /\.(csv|json|txt)$/.test(name);
  return new Map(
    Object.entries(files).map(([name, bytes]) => [name, isText(name) ? new TextDecoder().decode(bytes) : bytes]),
  );
}

/** Packed again. Unless told otherwise, datapackage.json says nothing of sizes and checksums, so that a change is met where it is. */
export function packed(files: LooseFiles, keepsChecksums = false): Uint8Array<ArrayBuffer> {
  const description = files.get('datapackage.json');
  const all = new Map(files);
  if (!keepsChecksums && typeof description === 'string')
    all.set('datapackage.json', description.replace(/"(bytes|hash)": ("[^"]*"|\d+),?/g, '').replace(/,(\s*\})/g, '$1'));
  return handZip([...all].map(([name, data]) => ({ name, data })));
}
