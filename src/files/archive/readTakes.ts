/**
 * Takes put together from the five tables that hold what was measured, read side by side from front to back, so that no more than a few
 * of them are in memory at a time. The rows of the four further tables follow the order of readings.csv.
 */
import type { EarlierReading, Take } from '../../piano/instrument.ts';
import type { Beat, PartialComponent, PartialReading } from '../../piano/reading.ts';
import type { Complain, ReadRow } from './readRows.ts';
import type { PlainObject } from './taggedJson.ts';

export type RowCursor = {
  /** Undefined where more rows have to be fetched, or none are left. */
  current(): ReadRow | undefined;
  next(): void;
  /** Fetches more rows. False at the end. */
  fetch(): Promise<boolean>;
  readonly file: string;
};

export function createRowCursor(file: string, batches: AsyncIterator<readonly ReadRow[]>): RowCursor {
  let rows: readonly ReadRow[] = [];
  let index = 0;
  return {
    file,
    current: () => rows[index],
    next() {
      index += 1;
    },
    async fetch() {
      const { done, value } = await batches.next();
      rows = done ? [] : value;
      index = 0;
      return !done;
    },
  };
}

export type MeasuredTables = {
  readonly earlier: RowCursor;
  readonly partials: RowCursor;
  readonly beats: RowCursor;
  readonly components: RowCursor;
};

/** The take whose row of readings.csv was read. */
export async function assembleTake({ row }: ReadRow, tables: MeasuredTables, complain: Complain): Promise<Take> {
  const id = String(row.id);
  const earlierReadings: EarlierReading[] = [];
  const reading = await withPartials(row.reading as PlainObject, { id, earlierNumber: 0 }, tables, complain);
  for (let found = await rowOf(tables.earlier, id); found; found = await rowOf(tables.earlier, id)) {
    tables.earlier.next();
    const { readingId: _, earlierNumber, reading: fields, ...rest } = found.row;
    if (earlierNumber !== earlierReadings.length + 1) outOfOrder(tables.earlier.file, found, complain);
    const of = { id, earlierNumber: earlierReadings.length + 1 };
    const earlier = { ...rest, reading: await withPartials(fields as PlainObject, of, tables, complain) };
    earlierReadings.push(earlier as unknown as EarlierReading);
  }
  return { ...row, reading, ...(earlierReadings.length > 0 && { earlierReadings }) } as unknown as Take;
}

type OfReading = { readonly id: string; readonly earlierNumber: number };

async function withPartials(reading: PlainObject, of: OfReading, tables: MeasuredTables, complain: Complain) {
  if (reading.partials !== undefined) return reading;
  const partials: PartialReading[] = [];
  const numbers = new Set<unknown>();
  for (let found = await rowOf(tables.partials, of.id); found; found = await rowOf(tables.partials, of.id)) {
    const { readingId: _, earlierNumber, ...fields } = found.row;
    if (earlierNumber !== of.earlierNumber) break;
    tables.partials.next();
    const { partialNumber } = fields;
    if (numbers.has(partialNumber))
      complain({
        file: tables.partials.file,
        row: found.number,
        column: 'partial_number',
        message: `${String(partialNumber)} stands twice for one reading`,
      });
    numbers.add(partialNumber);
    const key = { ...of, partialNumber };
    const beats = await linesOf<Beat>(tables.beats, key);
    const components = await linesOf<PartialComponent>(tables.components, key);
    partials.push({ ...(fields as unknown as PartialReading), beats, components });
  }
  return { ...reading, partials };
}

async function linesOf<Line>(
  cursor: RowCursor,
  { id, earlierNumber, partialNumber }: OfReading & { partialNumber: unknown },
) {
  const lines: Line[] = [];
  for (;;) {
    const found = cursor.current() ?? (await rowOf(cursor, id));
    if (found === undefined) return lines;
    const { readingId, earlierNumber: number, partialNumber: partial, ...fields } = found.row;
    if (readingId !== id || number !== earlierNumber || partial !== partialNumber) return lines;
    cursor.next();
    lines.push(fields as Line);
  }
}

/** The row at the cursor where it belongs to this take. */
async function rowOf(cursor: RowCursor, id: string): Promise<ReadRow | undefined> {
  let found = cursor.current();
  while (found === undefined && (await cursor.fetch())) found = cursor.current();
  return found?.row.readingId === id ? found : undefined;
}

/** What is left once all takes were read belongs to none, or stands out of order. */
export async function checkLeftOver(cursor: RowCursor, complain: Complain): Promise<void> {
  const found = cursor.current() ?? ((await cursor.fetch()) ? cursor.current() : undefined);
  if (found !== undefined) outOfOrder(cursor.file, found, complain);
}

function outOfOrder(file: string, { row, number }: ReadRow, complain: Complain): void {
  const message = `does not follow the order of readings.csv, or is of no reading there (${JSON.stringify(String(row.readingId).slice(0, 80))})`;
  complain({ file, row: number, column: null, message });
}
