/** A ZIP file written from front to back, one file in it after another, without holding more than a piece of it. */
import { Zip, type ZipInputFile } from 'fflate';
import { ArchiveFault } from './archiveFault.ts';
import { createDeflater } from './deflater.ts';
import { createFileDigest } from './fileDigest.ts';

export type WrittenFile = { readonly path: string; readonly byteCount: number; readonly sha256: string };

export type ZipFileWriter = {
  push(bytes: Uint8Array<ArrayBuffer>): Promise<void>;
  /** Ends this file. */
  finish(): Promise<WrittenFile>;
};

export type ZipWriter = {
  /** One file at a time. @param isStored true for what is compressed already */
  file(path: string, isStored: boolean): ZipFileWriter;
  /** What has been written since it was last asked for. */
  take(): Uint8Array[];
  finish(): void;
};

/** The last offset that the format can name without its extension for large files, with room for the list of files at the end. */
const MOST_ZIP_BYTES = 2 ** 32 - 2 ** 25;
const MOST_FILES = 65_000;

/** @param writtenAt ISO 8601, the date that the files in it bear */
export function createZipWriter(writtenAt: string, mostBytes = MOST_ZIP_BYTES): ZipWriter {
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
  return {
    file(path, isStored) {
      fileCount += 1;
      limit();
      return fileWriter(zip, path, { isStored, writtenAt, limit });
    },
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

type FileOptions = { readonly isStored: boolean; readonly writtenAt: string; readonly limit: () => void };

function fileWriter(zip: Zip, path: string, { isStored, writtenAt, limit }: FileOptions): ZipFileWriter {
  const entry: ZipInputFile = { filename: path, size: 0, crc: 0, compression: isStored ? 0 : 8, mtime: writtenAt };
  zip.add(entry);
  const emit = (bytes: Uint8Array, isLast: boolean) => entry.ondata?.(null, bytes as Uint8Array<ArrayBuffer>, isLast);
  const digest = createFileDigest(true);
  const deflater = isStored ? undefined : createDeflater((bytes) => emit(bytes, false));
  return {
    async push(bytes) {
      digest.add(bytes);
      if (deflater) await deflater.push(bytes);
      else emit(bytes, false);
      limit();
    },
    async finish() {
      await deflater?.finish();
      entry.size = digest.byteCount();
      entry.crc = digest.crc();
      emit(new Uint8Array(0), true);
      limit();
      return { path, byteCount: digest.byteCount(), sha256: digest.sha256() };
    },
  };
}
