/** Which pins a round over the block asks for, in pin order, and where one stands in it. */
import type { StringPosition } from '../../piano/reading.ts';
import type { ScheduleRow, TorqueReading } from '../../piano/stringingRecords.ts';
import { usualStringCount } from '../../piano/usualStringing.ts';

export type PinAddress = { readonly midi: number; readonly stringPosition: StringPosition };
export type PinChoice = 'one' | 'all';

/** The felt strip lets this one sound, so its slip is known. */
const CENTRE: StringPosition = 2;

/**
 * One pin a note is the centre string's. For every pin the schedule says how many strings a note has, or else what is usual; a string
 * that is the only one of its note is the whole unison (position 0).
 */
export function pinRound(midis: readonly number[], choice: PinChoice, schedule: readonly ScheduleRow[]): PinAddress[] {
  if (choice === 'one') return midis.map((midi) => ({ midi, stringPosition: CENTRE }));
  return midis.flatMap((midi) => positionsOf(midi, schedule).map((stringPosition) => ({ midi, stringPosition })));
}

function positionsOf(midi: number, schedule: readonly ScheduleRow[]): StringPosition[] {
  const stated = schedule.find((row) => row.midi === midi)?.stringCount ?? null;
  const count = stated ?? usualStringCount(midi);
  if (count <= 1) return [0];
  return count === 2 ? [1, 2] : [1, 2, 3];
}

export function isSamePin(a: PinAddress, b: PinAddress): boolean {
  return a.midi === b.midi && a.stringPosition === b.stringPosition;
}

/** The reading that a new one of this pin in this direction takes the place of. */
export function standingReading(
  readings: readonly TorqueReading[],
  pin: PinAddress,
  direction: TorqueReading['direction'],
): TorqueReading | undefined {
  return readings.find((reading) => isSamePin(reading, pin) && reading.direction === direction);
}

/** The place of the first pin without a reading; the beginning where all are read. */
export function firstUnread(round: readonly PinAddress[], readings: readonly TorqueReading[]): number {
  return Math.max(
    0,
    round.findIndex((pin) => !readings.some((reading) => isSamePin(reading, pin))),
  );
}
