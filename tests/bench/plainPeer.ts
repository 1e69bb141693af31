/**
 * The least that bringing tables in and writing them out can take in a browser: the same bytes unpacked and put into a database as they
 * are, without a look at them, and read and packed again. What is above this goes into reading, checking and merging.
 */
import { createWriteStream } from 'node:fs';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { createDeflateRaw } from 'node:zlib';
import type { Page } from 'playwright-core';
import { NODE_BYTE_WORK } from '../../src/cli/archive/nodeByteWork.ts';
import { withFileBytes } from '../../src/cli/fileBytes.ts';
import { readZipDirectory } from '../../src/files/archive/zipDirectory.ts';
import { entryBytes } from '../../src/files/archive/zipEntry.ts';

/** Enough that a second passes. */
const MOST_BYTES = 64e6;

/** Packs the beginning of an archive's largest table into a file of its own. @returns how many bytes it unpacks to */
export function writePeerFile(archive: string, file: string): Promise<number> {
  return withFileBytes(archive, async (source) => {
    const [largest] = (await readZipDirectory(source)).sort((one, other) => other.byteCount - one.byteCount);
    if (!largest) throw new RangeError(`${archive} is empty`);
    let byteCount = 0;
    const table = entryBytes({ source, byteWork: NODE_BYTE_WORK }, largest);
    async function* beginning() {
      for await (const piece of table) {
        byteCount += piece.length;
        yield piece;
        if (byteCount >= MOST_BYTES) return;
      }
    }
    await pipeline(Readable.from(beginning()), createDeflateRaw({ level: 1 }), createWriteStream(file));
    return byteCount;
  });
}

/** On a page of the app's own origin. */
export async function choosePeerFile(page: Page, file: string): Promise<void> {
  await page.evaluate(() => {
    const input = document.createElement('input');
    input.type = 'file';
    input.id = 'peer';
    document.body.append(input);
  });
  await page.setInputFiles('#peer', file);
}

/** Unpacks the file and puts it into a database: a megabyte a row, ten rows a transaction, on the disk before the next one. */
export async function putPlainly(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const file = document.querySelector<HTMLInputElement>('#peer')?.files?.[0];
    if (!file) throw new Error('the peer file was not chosen');
    const database = await new Promise<IDBDatabase>((resolve, reject) => {
      const opening = indexedDB.open('peer', 1);
      opening.onupgradeneeded = () => opening.result.createObjectStore('bytes', { autoIncrement: true });
      opening.onsuccess = () => resolve(opening.result);
      opening.onerror = () => reject(opening.error);
    });
    let rows: Uint8Array[] = [];
    const write = () =>
      new Promise<void>((resolve, reject) => {
        const writing = database.transaction('bytes', 'readwrite', { durability: 'strict' });
        for (const row of rows) writing.objectStore('bytes').put(row);
        rows = [];
        writing.oncomplete = () => resolve();
        writing.onerror = () => reject(writing.error);
      });
    let gathered = new Uint8Array(1 << 20);
    let filled = 0;
    const reader = file.stream().pipeThrough(new DecompressionStream('deflate-raw')).getReader();
    for (let next = await reader.read(); !next.done; next = await reader.read())
      for (let piece: Uint8Array = next.value; piece.length > 0; ) {
        const part = piece.subarray(0, gathered.length - filled);
        gathered.set(part, filled);
        filled += part.length;
        piece = piece.subarray(part.length);
        if (filled < gathered.length) continue;
        rows.push(gathered);
        gathered = new Uint8Array(1 << 20);
        filled = 0;
        if (rows.length === 10) await write();
      }
    rows.push(gathered.subarray(0, filled));
    await write();
    database.close();
  });
}

/** Reads them back, ten rows at a time, and packs them. */
export async function takePlainly(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const database = await new Promise<IDBDatabase>((resolve, reject) => {
      const opening = indexedDB.open('peer', 1);
      opening.onsuccess = () => resolve(opening.result);
      opening.onerror = () => reject(opening.error);
    });
    const rowsFrom = (key: number) =>
      new Promise<Uint8Array<ArrayBuffer>[]>((resolve, reject) => {
        const reading = database.transaction('bytes').objectStore('bytes').getAll(IDBKeyRange.lowerBound(key), 10);
        reading.onsuccess = () => resolve(reading.result);
        reading.onerror = () => reject(reading.error);
      });
    const packing = new CompressionStream('deflate-raw');
    const blob = new Response(packing.readable).blob();
    const writer = packing.writable.getWriter();
    let key = 1;
    for (let rows = await rowsFrom(key); rows.length > 0; rows = await rowsFrom(key)) {
      key += rows.length;
      for (const row of rows) await writer.write(row);
    }
    await writer.close();
    await blob;
    database.close();
    indexedDB.deleteDatabase('peer');
  });
}
