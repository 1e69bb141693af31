/** The sounds and surveys that the app has stored, read from the browser's database itself. */
import type { Page } from 'playwright-core';
import type { Survey } from '../../../src/piano/instrument.ts';
import type { SoundRow } from '../../../src/records/rows.ts';

type Stored = { surveys: Survey[]; sounds: Pick<SoundRow, 'id' | 'durationS' | 'byteCount'>[] };

export function storedSounds(page: Page): Promise<Stored> {
  return page.evaluate(async () => {
    const done = <Value>(request: IDBRequest<Value>) =>
      new Promise<Value>((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const database = await done(indexedDB.open('stillpin'));
    const all = <Row>(name: string) => done<Row[]>(database.transaction(name).objectStore(name).getAll());
    const [surveys, sounds] = await Promise.all([all<Survey>('surveys'), all<SoundRow>('sounds')]);
    database.close();
    return { surveys, sounds: sounds.map(({ id, durationS, byteCount }) => ({ id, durationS, byteCount })) };
  });
}
