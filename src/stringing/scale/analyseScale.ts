/** A whole schedule at a pitch: every note's figures, the pull of the sections and of all strings, steps that stand out, cautions. */
import type { ScheduleRow } from '../../piano/stringingRecords.ts';
import type { WireGrade } from '../../piano/wireGrade.ts';
import { type KnownBreaks, rowsBySection, type ScheduleRows, scheduleBreaks } from '../schedule/scheduleRows.ts';
import { type NoteFigures, noteFigures } from './noteFigures.ts';
import { type ScaleCaution, scaleCautions } from './scaleCautions.ts';
import { type TensionJump, tensionSteps } from './tensionJumps.ts';

export type SectionFigures = {
  readonly fromMidi: number;
  readonly toMidi: number;
  readonly stringCount: number;
  readonly tensionN: number;
  /** Notes whose pull is not known and not in the figures. */
  readonly unknownNoteCount: number;
};

export type ScaleFigures = {
  readonly pitchStandardHz: number;
  /** In the order of the rows. */
  readonly notes: readonly NoteFigures[];
  readonly sections: readonly SectionFigures[];
  /** Of all strings whose pull is known. */
  readonly total: SectionFigures | null;
  readonly steps: readonly TensionJump[];
  readonly cautions: readonly ScaleCaution[];
};

export type ScaleOptions = KnownBreaks & {
  readonly pitchStandardHz: number;
  readonly ownGrades?: readonly WireGrade[];
};

/**
 * @param rows ascending by note
 * @throws {RangeError} if the pitch standard or a dimension is not above zero
 */
export function analyseScale(rows: ScheduleRows, options: ScaleOptions): ScaleFigures {
  const { pitchStandardHz, ownGrades = [] } = options;
  const breaksAfterMidi = scheduleBreaks(rows, options);
  const notes = rows.map((row) => noteFigures(row, pitchStandardHz, ownGrades));
  const steps = tensionSteps(rows, notes, breaksAfterMidi);
  const byNote = new Map(notes.map((note) => [note.midi, note]));
  const figures = {
    pitchStandardHz,
    notes,
    sections: rowsBySection(rows, breaksAfterMidi).map((section) => sectionFigures(section, byNote)),
    total: rows.length > 0 ? sectionFigures(rows, byNote) : null,
    steps,
  };
  return { ...figures, cautions: scaleCautions(figures) };
}

function sectionFigures(rows: readonly ScheduleRow[], byNote: ReadonlyMap<number, NoteFigures>): SectionFigures {
  const notes = rows.flatMap(({ midi }) => byNote.get(midi) ?? []);
  const known = notes.filter(({ noteTensionN }) => noteTensionN !== null);
  return {
    fromMidi: rows[0]?.midi ?? 0,
    toMidi: rows.at(-1)?.midi ?? 0,
    stringCount: known.reduce((sum, { stringCount }) => sum + (stringCount ?? 0), 0),
    tensionN: known.reduce((sum, { noteTensionN }) => sum + (noteTensionN ?? 0), 0),
    unknownNoteCount: notes.length - known.length,
  };
}
