import type { RecordsDatabase } from './database.ts';
import { isDeleted } from './soundRows.ts';

/** Of instruments that are not of the demonstration. */
export async function surveysBegunSince(database: RecordsDatabase, startedAfter: string) {
  const invented = await database.instruments.filter((row) => row.isDemonstration).primaryKeys();
  const all = await database.surveys.toArray(); // at once, which is many times faster than a filter's step from row to row
  const rows = all.filter(
    (row) => row.startedAt > startedAfter && !isDeleted(row) && !invented.includes(row.instrumentId),
  );
  const [first] = rows.map((row) => row.startedAt).sort();
  return { count: rows.length, firstAt: first ?? null };
}
