/** What the app has stored, read from the browser's database itself and not through the app. */
import type { Page } from 'playwright-core';
import type { TakeRow } from '../../../src/records/rows.ts';

export type StoredTake = {
  midi: number;
  offsetCents: number;
  isUsable: boolean;
  isKept: boolean;
  faults: string[];
  /** More than one where the sound was measured again. */
  readingCount: number;
};

export function storedTakes(page: Page): Promise<StoredTake[]> {
  return page.evaluate(async () => {
    const done = <Value>(request: IDBRequest<Value>) =>
      new Promise<Value>((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const database = await done(indexedDB.open('stillpin'));
    const rows: TakeRow[] = await done(database.transaction('takes').objectStore('takes').getAll());
    database.close();
    return rows.map(({ midi, keptFlag, reading, earlierReadings }) => ({
      midi,
      offsetCents: reading.offsetCents,
      isUsable: reading.quality.isUsable,
      isKept: keptFlag === 1,
      faults: [...reading.quality.faults],
      readingCount: 1 + (earlierReadings?.length ?? 0),
    }));
  });
}
