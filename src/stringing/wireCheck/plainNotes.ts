/** The plain strings of a schedule, with the inharmonicity that is expected of them. */
import type { ScheduleRow } from '../../piano/stringingRecords.ts';
import type { ScaleOptions } from '../scale/analyseScale.ts';
import { noteFigures } from '../scale/noteFigures.ts';
import { isWound, rowsBySection, type ScheduleRows } from '../schedule/scheduleRows.ts';
import type { StatedDiameter } from './diameterRun.ts';

export type PlainNote = {
  readonly diameterMm: number;
  readonly speakingLengthMm: number;
  readonly expectedB: number;
  readonly isLengthInterpolated: boolean;
  /** Plain wire of its section, itself included, ascending by note. */
  readonly section: readonly StatedDiameter[];
};

export function plainNotes(
  rows: ScheduleRows,
  breaks: readonly number[],
  { pitchStandardHz, ownGrades = [] }: ScaleOptions,
): Map<number, PlainNote> {
  const notes = new Map<number, PlainNote>();
  for (const rowsOfSection of rowsBySection(rows, breaks)) {
    const stated = rowsOfSection.flatMap((row) => (isWound(row) ? [] : statedOf(row)));
    const section = stated.map(({ midi, diameterMm }) => ({ midi, diameterMm }));
    for (const { row, diameterMm, speakingLengthMm } of stated) {
      const expectedB = noteFigures(row, pitchStandardHz, ownGrades).predictedB;
      if (expectedB === null) continue;
      const isLengthInterpolated = row.interpolated.includes('speakingLengthMm');
      notes.set(row.midi, {
        diameterMm,
        speakingLengthMm,
        expectedB,
        isLengthInterpolated,
        section,
      });
    }
  }
  return notes;
}

function statedOf(row: ScheduleRow) {
  const { midi, wireDiameterMm: diameterMm, speakingLengthMm } = row;
  return diameterMm === null || speakingLengthMm === null ? [] : [{ row, midi, diameterMm, speakingLengthMm }];
}

export function plainRange(section: readonly ScheduleRow[], plain: ReadonlyMap<number, PlainNote>) {
  const midis = section.map(({ midi }) => midi).filter((midi) => plain.has(midi));
  const [fromMidi, toMidi] = [midis[0], midis.at(-1)];
  return fromMidi === undefined || toMidi === undefined ? [] : [{ fromMidi, toMidi }];
}
