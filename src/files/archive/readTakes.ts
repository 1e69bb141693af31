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
  const { partials: cursor, beats, components } = tables;
  for (let found = await rowOf(cursor, of.id); found; found = cursor.current() ?? (await rowOf(cursor, of.id))) {
    const key = keyOf(found);
    if (key.readingId !== of.id || key.earlierNumber !== of.earlierNumber) break;
    cursor.next();
    const partial = found.row.partial as { -readonly [Key in keyof PartialReading]: PartialReading[Key] };
    const { partialNumber } = partial;
    const isAfter = partialNumber > (partials.at(-1)?.partialNumber ?? 0);
    if (!isAfter && partials.some((before) => before.partialNumber === partialNumber))
      complain({
        file: cursor.file,
        row: found.number,
        column: 'partial_number',
        message: `${partialNumber} stands twice for one reading`,
      });
    partial.beats = NO_LINES;
    partial.components = NO_LINES;
    const hasBeats = isNext(beats, of, partialNumber);
    if (hasBeats === true || (hasBeats !== false && (await hasBeats)))
      partial.beats = await linesOf<Beat>(beats, of, partialNumber);
    const hasComponents = isNext(components, of, partialNumber);
    if (hasComponents === true || (hasComponents !== false && (await hasComponents)))
      partial.components = await linesOf<PartialComponent>(components, of, partialNumber);
    partials.push(partial);
  }
  reading.partials = partials;
  return reading;
}

const NO_LINES: never[] = [];

type LineKey = { readonly readingId: unknown; readonly earlierNumber: unknown; readonly partialNumber?: unknown };

function keyOf({ row }: ReadRow): LineKey {
  return row.of as LineKey;
}

/** Waits for rows only where none is at hand: most of the time one is. */
function isNext(cursor: RowCursor, of: OfReading, partialNumber: number): boolean | Promise<boolean> {
  const found = cursor.current();
  if (found !== undefined) return isOfPartial(found, of, partialNumber);
  return rowOf(cursor, of.id).then((row) => row !== undefined && isOfPartial(row, of, partialNumber));
}

function isOfPartial(found: ReadRow, { id, earlierNumber }: OfReading, partialNumber: number): boolean {
  const key = keyOf(found);
  return key.readingId === id && key.earlierNumber === earlierNumber && key.partialNumber === partialNumber;
}

async function linesOf<Line>(cursor: RowCursor, of: OfReading, partialNumber: number): Promise<Line[]> {
  const lines: Line[] = [];
  for (let isMore: boolean = true; isMore; ) {
    for (let found = cursor.current(); found && isOfPartial(found, of, partialNumber); found = cursor.current()) {
      lines.push(found.row.line as Line);
      cursor.next();
    }
    isMore = cursor.current() === undefined && (await cursor.fetch());
  }
  return lines;
}

/** The row at the cursor where it belongs to this take. */
async function rowOf(cursor: RowCursor, id: string): Promise<ReadRow | undefined> {
  let found = cursor.current();
  while (found === undefined && (await cursor.fetch())) found = cursor.current();
  return found !== undefined && readingIdOf(found) === id ? found : undefined;
}

function readingIdOf({ row }: ReadRow): unknown {
  return row.readingId ?? (row.of as LineKey | undefined)?.readingId;
}

/** What is left once all takes were read belongs to none, or stands out of order. */
export async function checkLeftOver(cursor: RowCursor, complain: Complain): Promise<void> {
  const found = cursor.current() ?? ((await cursor.fetch()) ? cursor.current() : undefined);
  if (found !== undefined) outOfOrder(cursor.file, found, complain);
}

function outOfOrder(file: string, { row, number }: ReadRow, complain: Complain): void {
  const message = `does not follow the order of readings.csv, or is of no reading there (${JSON.stringify(String(readingIdOf({ row, number })).slice(0, 80))})`;
  complain({ file, row: number, column: null, message });
}
