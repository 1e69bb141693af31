/** A ZIP file written from front to back, one file in it after another, without holding more than a piece of it. */
import { Zip, type ZipInputFile } from 'fflate';
import { ArchiveFault } from './archiveFault.ts';
import { type ByteWork, usualByteWork } from './byteWork.ts';
import type { DigestFacts } from './fileDigest.ts';
import { storingPacker } from './packer.ts';
import type { Spool } from './spool.ts';

export type WrittenFile = { readonly path: string; readonly byteCount: number; readonly sha256: string };

export type ZipFileWriter = {
  push(bytes: Uint8Array<ArrayBuffer>): Promise<void>;
  /** Ends this file. */
  finish(): Promise<WrittenFile>;
};

export type ZipWriter = {
  /** One file at a time. @param isStored true for what is compressed already */
  file(path: string, isStored: boolean): ZipFileWriter;
  /** A file beside the one that is being written: it takes its place in the archive when it is finished. */
  spooledFile(path: string, spool: Spool, handOn: () => Promise<void>): ZipFileWriter;
  /** What has been written since it was last asked for. */
  take(): Uint8Array[];
  finish(): void;
};

/** The last offset that the format can name without its extension for large files, with room for the list of files at the end. */
const MOST_ZIP_BYTES = 2 ** 32 - 2 ** 25;
const MOST_FILES = 65_000;

export type ZipOptions = { readonly mostBytes?: number | undefined; readonly byteWork?: ByteWork | undefined };

/** @param writtenAt ISO 8601, the date that the files in it bear */
export function createZipWriter(
  writtenAt: string,
  { mostBytes = MOST_ZIP_BYTES, byteWork = usualByteWork() }: ZipOptions = {},
): ZipWriter {
  let pieces: Uint8Array[] = [];
  let byteCount = 0;
  let fileCount = 0;
  const zip = new Zip((error, bytes) => {
    if (error) throw error;
    byteCount += bytes.length;
    pieces.push(bytes);
  });
  const limit = () => {
    if (byteCount > mostBytes || fileCount > MOST_FILES) throw tooLarge(mostBytes);
  };
  const begin = (path: string, isStored: boolean) => {
    fileCount += 1;
    limit();
    return zipEntry(zip, { path, isStored, writtenAt });
  };
  return {
    file: (path, isStored) => fileWriter(path, { begin: () => begin(path, isStored), isStored, byteWork, limit }),
    spooledFile: (path, spool, handOn) =>
      spooledWriter(path, { begin: () => begin(path, false), spool, byteWork, handOn, limit }),
    take() {
      const taken = pieces;
      pieces = [];
      return taken;
    },
    finish: () => zip.end(),
  };
}

function tooLarge(mostBytes: number): ArchiveFault {
  const gigabytes = (mostBytes / 1e9).toFixed(1);
  const message = `one archive holds at most ${gigabytes} GB and ${MOST_FILES} files; write several archives, of some instruments each, or leave the sounds out`;
  return new ArchiveFault('too-large', { file: null, row: null, column: null, message });
}

type Entry = { emit(packed: Uint8Array): void; end(facts: DigestFacts): void };
type EntryFacts = { readonly path: string; readonly isStored: boolean; readonly writtenAt: string };

function zipEntry(zip: Zip, { path, isStored, writtenAt }: EntryFacts): Entry {
  const entry: ZipInputFile = { filename: path, size: 0, crc: 0, compression: isStored ? 0 : 8, mtime: writtenAt };
  zip.add(entry);
  const pass = (bytes: Uint8Array, isLast: boolean) => entry.ondata?.(null, bytes as Uint8Array<ArrayBuffer>, isLast);
  return {
    emit: (packed) => pass(packed, false),
    end({ byteCount, crc }) {
      entry.size = byteCount;
      entry.crc = crc;
      pass(new Uint8Array(0), true);
    },
  };
}

type FileOptions = {
  readonly begin: () => Entry;
  readonly byteWork: ByteWork;
  readonly limit: () => void;
};

function fileWriter(
  path: string,
  { begin, isStored, byteWork, limit }: FileOptions & { isStored: boolean },
): ZipFileWriter {
  const entry = begin();
  const packer = isStored ? storingPacker(byteWork.createDigest(true), entry.emit) : byteWork.createPacker(entry.emit);
  return {
    async push(bytes) {
      await packer.push(bytes);
      limit();
    },
    async finish() {
      const facts = await packer.finish();
      entry.end(facts);
      limit();
      return { path, byteCount: facts.byteCount, sha256: facts.sha256 };
    },
  };
}

type SpoolOptions = FileOptions & { readonly spool: Spool; readonly handOn: () => Promise<void> };

function spooledWriter(path: string, { begin, spool, byteWork, handOn, limit }: SpoolOptions): ZipFileWriter {
  let packed: Uint8Array[] = [];
  const packer = byteWork.createPacker((bytes) => void packed.push(bytes));
  const spoolPacked = async () => {
    const pieces = packed;
    packed = [];
    for (const piece of pieces) await spool.add(piece);
  };
  return {
    async push(bytes) {
      await packer.push(bytes);
      await spoolPacked();
    },
    async finish() {
      const facts = await packer.finish();
      await spoolPacked();
      const entry = begin();
      for await (const piece of spool.pieces()) {
        entry.emit(piece);
        limit();
        await handOn();
      }
      entry.end(facts);
      return { path, byteCount: facts.byteCount, sha256: facts.sha256 };
    },
  };
}
