/** The invented schedule of 88 notes that the scale is checked with, as rows. */
import { readFileSync } from 'node:fs';
import { readScheduleCsv } from '../../../src/files/scheduleCsv.ts';
import type { ScheduleRow } from '../../../src/piano/stringingRecords.ts';

export function schedule88(): readonly ScheduleRow[] {
  const read = readScheduleCsv(
    readFileSync(new URL('../../reference/stringing/schedule88.csv', import.meta.url), 'utf8'),
  );
  if (!read.ok) throw new Error(read.message);
  return read.rows;
}
