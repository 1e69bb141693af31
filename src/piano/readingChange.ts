import { hzToCents } from './cents.ts';
import type { NoteReading } from './reading.ts';

/** How far partial 1 went from one reading of a sound to another: above zero where the later one reads sharp of the earlier. */
export function readingChangeCents(earlier: NoteReading, later: NoteReading): number {
  return hzToCents(later.partial1Hz, earlier.partial1Hz);
}
