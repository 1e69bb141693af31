/** What stands in the browser's database, read without the program. */
import type { Page } from 'playwright-core';

export type StoredRow = { readonly id: string; readonly [field: string]: unknown };

/** Rows of a table with these fields alone, so that large ones need not come over. Empty where there is no such table. */
export function storedRows(page: Page, table: string, fields: readonly string[]): Promise<StoredRow[]> {
  return page.evaluate(
    async ([name, wanted]) => {
      const done = <Value>(request: IDBRequest<Value>) =>
        new Promise<Value>((resolve, reject) => {
          request.onsuccess = () => resolve(request.result);
          request.onerror = () => reject(request.error);
        });
      const database = await done(indexedDB.open('stillpin'));
      const isThere = database.objectStoreNames.contains(name);
      const rows: StoredRow[] = isThere ? await done(database.transaction(name).objectStore(name).getAll()) : [];
      database.close();
      return rows.map((row) => Object.fromEntries(wanted.map((field) => [field, row[field]])) as StoredRow);
    },
    [table, ['id', ...fields]] as const,
  );
}
