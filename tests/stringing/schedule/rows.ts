/** Rows of schedules for tests: plain wire from a few figures. */
import type { ScheduleRow } from '../../../src/piano/stringingRecords.ts';
import { emptyRow } from '../../../src/stringing/schedule/scheduleRows.ts';

export function plainRow(midi: number, change: Partial<ScheduleRow> = {}): ScheduleRow {
  return { ...emptyRow(midi), stringCount: 3, wireGrade: 'ASTM A228', bridge: 'long', ...change };
}

export function woundRow(midi: number, change: Partial<ScheduleRow> = {}): ScheduleRow {
  return {
    ...emptyRow(midi),
    stringCount: 2,
    wrap: 'copper',
    coreDiameterMm: 1,
    wireDiameterMm: 2,
    bridge: 'bass',
    ...change,
  };
}

/** A length that is straight in its logarithm: 400 mm at A4, 5 % shorter each note. */
export function straightLengthMm(midi: number): number {
  return 400 * 0.95 ** (midi - 69);
}

export function plainRows(fromMidi: number, toMidi: number): ScheduleRow[] {
  return Array.from({ length: toMidi - fromMidi + 1 }, (_, index) =>
    plainRow(fromMidi + index, { speakingLengthMm: straightLengthMm(fromMidi + index), wireDiameterMm: 1 }),
  );
}
