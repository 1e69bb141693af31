/** Puts a database of version 3 into the browser, as that version's program laid it out, with many copies of its takes. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';

/** Counted from the project's folder, since the bench is bundled elsewhere. */
const ROWS = join(process.cwd(), 'tests', 'fixtures', 'databaseVersion3', 'rows.json');

export async function fillVersion3(page: Page, takeCount: number): Promise<void> {
  const rows = readFileSync(ROWS, 'utf8');
  await page.evaluate(
    async ({ text, count }) => {
      const revive = (_key: string, value: unknown): unknown => {
        if (typeof value !== 'object' || value === null) return value;
        if ('base64' in value) return Uint8Array.from(atob(String(value.base64)), (letter) => letter.charCodeAt(0));
        if ('float64' in value) return Float64Array.from(value.float64 as number[], Number);
        return value;
      };
      const tables = JSON.parse(text, revive) as Record<string, { id: string }[]>;
      const done = <Value>(request: IDBRequest<Value>) =>
        new Promise<Value>((resolve, reject) => {
          request.onsuccess = () => resolve(request.result);
          request.onerror = () => reject(request.error);
        });
      const opening = indexedDB.open('stillpin', 30); // the database wrapper multiplies its versions by ten
      opening.onupgradeneeded = () => {
        const store = (name: string, indexes: Record<string, string | string[]>) => {
          const made = opening.result.createObjectStore(name, { keyPath: 'id' });
          for (const [index, path] of Object.entries(indexes)) made.createIndex(index, path);
        };
        store('instruments', {});
        store('events', { instrumentId: 'instrumentId' });
        store('visits', { instrumentId: 'instrumentId' });
        store('surveys', { visitId: 'visitId', instrumentId: 'instrumentId' });
        store('takes', {
          '[surveyId+midi+stringPosition]': ['surveyId', 'midi', 'stringPosition'],
          '[instrumentId+keptFlag]': ['instrumentId', 'keptFlag'],
        });
        store('sounds', { '[surveyId+byteCount]': ['surveyId', 'byteCount'], instrumentId: 'instrumentId' });
        store('calibrations', { deviceLabel: 'deviceLabel' });
      };
      const database = await done(opening);
      const writing = database.transaction([...database.objectStoreNames], 'readwrite', { durability: 'strict' });
      for (const [name, list] of Object.entries(tables)) {
        const copies = name === 'takes' ? Array.from({ length: count }, (_, index) => index) : list;
        for (const [index, copy] of copies.entries()) {
          const row = typeof copy === 'number' ? { ...list[copy % list.length], id: `take-${index}` } : copy;
          writing.objectStore(name).put(row);
        }
      }
      await new Promise<void>((resolve, reject) => {
        writing.oncomplete = () => resolve();
        writing.onerror = () => reject(writing.error);
      });
      database.close();
    },
    { text: rows, count: takeCount },
  );
}
