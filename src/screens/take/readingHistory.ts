/** The readings that a take's sound was given, as rows of a table. */
import type { Measured, Take } from '../../piano/instrument.ts';
import type { NoteReading } from '../../piano/reading.ts';
import { readingChangeCents } from '../../piano/readingChange.ts';

export type HistoryRow = {
  readonly key: string;
  readonly reading: NoteReading;
  readonly measured: Measured | null;
  /** Against the reading before; null for the first. */
  readonly changeCents: number | null;
};

/** The newest first; nothing where the take was read once. */
export function historyRows({ reading, measured, earlierReadings = [] }: Take): HistoryRow[] {
  if (earlierReadings.length === 0) return [];
  const all = [...earlierReadings, { reading, measured: measured ?? null }];
  const rows = all.map((own, index) => {
    const before = all[index - 1];
    const changeCents = before ? readingChangeCents(before.reading, own.reading) : null;
    return { key: String(index), ...own, changeCents };
  });
  return rows.reverse();
}
