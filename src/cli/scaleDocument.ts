/** A scale as the JSON document of the command line: units in the keys, null for what is not known. */
import { midiToName } from '../piano/note.ts';
import type { ScheduleRow } from '../piano/stringingRecords.ts';
import type { ScaleFigures, SectionFigures } from '../stringing/scale/analyseScale.ts';
import type { NoteFigures } from '../stringing/scale/noteFigures.ts';
import type { TensionJump } from '../stringing/scale/tensionJumps.ts';
import { cautionText } from './scaleWords.ts';

export function scaleDocument(file: string, rows: readonly ScheduleRow[], scale: ScaleFigures) {
  const grades = new Map(rows.map(({ midi, wireGrade }) => [midi, wireGrade]));
  return {
    file,
    pitchStandardHz: scale.pitchStandardHz,
    notes: scale.notes.map((note) => ({
      ...noteDocument(note),
      wireGrade: grades.get(note.midi) ?? null,
      strengthTable: note.strength?.known ? note.strength.gradeName : null,
      tensileStrengthMpa: note.strength?.known ? rounded(note.strength.tensileStrengthMpa, 1) : null,
      cautions: cautionsAt(scale, note.midi),
    })),
    totalTensionN: scale.total ? rounded(scale.total.tensionN, 1) : null,
    total: scale.total && sectionDocument(scale.total),
    sections: scale.sections.map(sectionDocument),
    jumps: scale.steps.filter(({ standsOut }) => standsOut).map(jumpDocument),
    cautions: scale.cautions.filter(({ midi }) => midi === null).map(cautionText),
  };
}

function noteDocument(note: NoteFigures) {
  return {
    note: midiToName(note.midi),
    midi: note.midi,
    strings: note.stringCount,
    frequencyHz: rounded(note.frequencyHz, 4),
    wound: note.isWound,
    tensionN: orNull(note.tensionN, 3),
    stressMpa: orNull(note.stressMpa, 3),
    breakingPercent: orNull(note.breakingShare === null ? null : 100 * note.breakingShare, 3),
    predictedB: note.predictedB === null ? null : Number(note.predictedB.toPrecision(6)),
    predictedBIsLowerBound: note.isWound,
    noteTensionN: orNull(note.noteTensionN, 3),
  };
}

function cautionsAt(scale: ScaleFigures, midi: number): string[] {
  return scale.cautions.filter((caution) => caution.midi === midi).map(cautionText);
}

function sectionDocument(section: SectionFigures) {
  return {
    fromNote: midiToName(section.fromMidi),
    toNote: midiToName(section.toMidi),
    strings: section.stringCount,
    tensionN: rounded(section.tensionN, 1),
    unknownNotes: section.unknownNoteCount,
  };
}

function jumpDocument(jump: TensionJump) {
  return {
    fromNote: midiToName(jump.fromMidi),
    toNote: midiToName(jump.toMidi),
    tensionChangePercent: rounded(100 * jump.tensionChange, 2),
    ofLengthPercent: rounded(100 * jump.ofLength, 2),
    ofWirePercent: rounded(100 * jump.ofMass, 2),
    atBreak: jump.isAtBreak,
  };
}

function rounded(value: number, digits: number): number {
  return Number(value.toFixed(digits));
}

function orNull(value: number | null, digits: number): number | null {
  return value === null ? null : rounded(value, digits);
}
