/** Which of several takes of one string is kept. */
import type { NoteReading } from '../piano/reading.ts';

/**
 * The rule, in this order: a usable take before one that is not; one without faults before one with; the smaller uncertainty
 * of partial 1; the longer take; the later one, since a note is replayed for a reason.
 * @param readings takes of the same note and string, in the order played
 * @returns the index of the best one; undefined if there is none
 */
export function bestTakeIndex(readings: readonly NoteReading[]): number | undefined {
  let best: number | undefined;
  let bestReading: NoteReading | undefined;
  for (const [index, reading] of readings.entries())
    if (!bestReading || !isBetter(bestReading, reading)) {
      best = index;
      bestReading = reading;
    }
  return best;
}

/** Whether take `a` is better than the later take `b`. */
function isBetter(a: NoteReading, b: NoteReading): boolean {
  if (a.quality.isUsable !== b.quality.isUsable) return a.quality.isUsable;
  const hasFault = (reading: NoteReading) => reading.quality.faults.length > 0;
  if (hasFault(a) !== hasFault(b)) return hasFault(b);
  if (a.partial1StandardUncertaintyHz !== b.partial1StandardUncertaintyHz)
    return a.partial1StandardUncertaintyHz < b.partial1StandardUncertaintyHz;
  return a.durationS > b.durationS;
}
