/** Where the bytes of an archive go while it is written: into a file on the disk where the browser can, else into a download. */
import type { Folder } from './fileAccess.ts';

export type ArchiveSink = {
  readonly write: (bytes: Uint8Array) => Promise<void>;
  /** The file is whole. */
  readonly finish: () => Promise<void>;
  /** Nothing of it stays. */
  readonly discard: () => Promise<void>;
};

/** Pieces are gathered to this size: fewer calls, and memory stays small. */
const GATHERED_BYTES = 4e6;

/** The browser writes beside the file and puts it in place when it is finished. */
export async function fileSink(file: FileSystemFileHandle): Promise<ArchiveSink> {
  const stream = await file.createWritable();
  const gathered = createGatherer((blob) => stream.write(blob));
  return {
    write: gathered.add,
    finish: async () => {
      await gathered.flush();
      await stream.close();
    },
    discard: () => stream.abort(),
  };
}

/** A new file in a folder; what was there under this name before is taken away first. */
export async function folderSink(folder: Folder, name: string): Promise<ArchiveSink> {
  const sink = await fileSink(await folder.getFileHandle(name, { create: true }));
  return {
    ...sink,
    discard: async () => {
      await sink.discard();
      await folder.removeEntry(name);
    },
  };
}

/** Kept by the browser until it is whole, on its disk where it is large, then handed to the user's downloads. */
export function downloadSink(name: string): ArchiveSink {
  const parts: Blob[] = [];
  const gathered = createGatherer(async (blob) => {
    parts.push(blob);
  });
  return {
    write: gathered.add,
    finish: async () => {
      await gathered.flush();
      download(new Blob(parts, { type: 'application/zip' }), name);
    },
    discard: async () => {
      parts.length = 0;
    },
  };
}

function createGatherer(pass: (blob: Blob) => Promise<void>) {
  let pieces: Uint8Array<ArrayBuffer>[] = [];
  let byteCount = 0;
  const flush = async () => {
    if (byteCount === 0) return;
    const blob = new Blob(pieces);
    pieces = [];
    byteCount = 0;
    await pass(blob);
  };
  const add = async (bytes: Uint8Array) => {
    pieces.push(bytes.slice());
    byteCount += bytes.length;
    if (byteCount >= GATHERED_BYTES) await flush();
  };
  return { add, flush };
}

function download(blob: Blob, name: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000); // the browser may still be reading it
}
