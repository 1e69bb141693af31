/** Two schedules along the compass: what the instrument carries, and what it would carry. */

import { hzToCents } from '../../piano/cents.ts';
import type { ScaleFigures } from './analyseScale.ts';
import type { NoteFigures } from './noteFigures.ts';

export type NoteComparison = {
  readonly midi: number;
  readonly before: NoteFigures | null;
  readonly planned: NoteFigures | null;
  /** Planned over before, less one; null where either is not known. */
  readonly tensionGrowth: number | null;
  readonly noteTensionGrowth: number | null;
  readonly stressGrowth: number | null;
  readonly predictedBGrowth: number | null;
};

export type TotalComparison = {
  readonly fromMidi: number;
  readonly toMidi: number;
  /** Over the notes whose pull is known in both. */
  readonly beforeN: number;
  readonly plannedN: number;
  readonly growth: number;
  readonly comparedNoteCount: number;
  readonly leftOutNoteCount: number;
};

export type ComparisonCaution =
  /** The plan raises the pitch too. Old strings, plates and blocks can break from that alone. */
  | { readonly kind: 'pitch-rises'; readonly cents: number }
  | { readonly kind: 'total-grows'; readonly growth: number; readonly addedN: number }
  | {
      readonly kind: 'section-grows';
      readonly fromMidi: number;
      readonly toMidi: number;
      readonly growth: number;
      readonly addedN: number;
    }
  /** Some notes could not be compared, so the totals are not the instrument's. */
  | { readonly kind: 'notes-left-out'; readonly noteCount: number };

export type ScaleComparison = {
  readonly notes: readonly NoteComparison[];
  readonly total: TotalComparison | null;
  readonly sections: readonly TotalComparison[];
  readonly cautions: readonly ComparisonCaution[];
};

/**
 * Chosen: a total 2 % higher is what the step from A4 = 435 to 440 Hz adds (2.3 %); below that the lengths' and diameters' own errors
 * (1 % of diameter is 2 % of tension) say nothing. A section may take 5 %: it borrows from the plate what its neighbours do not ask.
 */
const GROWTH_TO_TELL = 0.02;
const SECTION_GROWTH_TO_TELL = 0.05;

/** Each at its own pitch standard. Sections are those of the planned one. */
export function compareScales(before: ScaleFigures, planned: ScaleFigures): ScaleComparison {
  const earlier = new Map(before.notes.map((note) => [note.midi, note]));
  const later = new Map(planned.notes.map((note) => [note.midi, note]));
  const midis = [...new Set([...earlier.keys(), ...later.keys()])].sort((a, b) => a - b);
  const notes = midis.map((midi) => compareNote(midi, earlier.get(midi) ?? null, later.get(midi) ?? null));
  const total = totalOf(notes);
  const sections = planned.sections.flatMap(({ fromMidi, toMidi }) => {
    const section = totalOf(notes.filter(({ midi }) => midi >= fromMidi && midi <= toMidi));
    return section ? [section] : [];
  });
  const cents = hzToCents(planned.pitchStandardHz, before.pitchStandardHz);
  const pitch: ComparisonCaution[] = cents > 0 ? [{ kind: 'pitch-rises', cents }] : [];
  return { notes, total, sections, cautions: [...pitch, ...comparisonCautions(total, sections)] };
}

function compareNote(midi: number, before: NoteFigures | null, planned: NoteFigures | null): NoteComparison {
  const growth = (figure: 'tensionN' | 'noteTensionN' | 'stressMpa' | 'predictedB') => {
    const [old, next] = [before?.[figure] ?? null, planned?.[figure] ?? null];
    return old === null || next === null ? null : next / old - 1;
  };
  return {
    midi,
    before,
    planned,
    tensionGrowth: growth('tensionN'),
    noteTensionGrowth: growth('noteTensionN'),
    stressGrowth: growth('stressMpa'),
    predictedBGrowth: growth('predictedB'),
  };
}

function totalOf(notes: readonly NoteComparison[]): TotalComparison | null {
  const compared = notes.filter(({ noteTensionGrowth }) => noteTensionGrowth !== null);
  const [first, last] = [notes[0], notes.at(-1)];
  if (compared.length === 0 || !first || !last) return null;
  const beforeN = compared.reduce((sum, note) => sum + (note.before?.noteTensionN ?? 0), 0);
  const plannedN = compared.reduce((sum, note) => sum + (note.planned?.noteTensionN ?? 0), 0);
  return {
    fromMidi: first.midi,
    toMidi: last.midi,
    beforeN,
    plannedN,
    growth: plannedN / beforeN - 1,
    comparedNoteCount: compared.length,
    leftOutNoteCount: notes.length - compared.length,
  };
}

function comparisonCautions(total: TotalComparison | null, sections: readonly TotalComparison[]): ComparisonCaution[] {
  if (!total) return [];
  const { growth, beforeN, plannedN, leftOutNoteCount } = total;
  const cautions: ComparisonCaution[] = [];
  if (growth >= GROWTH_TO_TELL) cautions.push({ kind: 'total-grows', growth, addedN: plannedN - beforeN });
  for (const section of sections) {
    if (section.growth < SECTION_GROWTH_TO_TELL) continue;
    const { fromMidi, toMidi } = section;
    const addedN = section.plannedN - section.beforeN;
    cautions.push({ kind: 'section-grows', fromMidi, toMidi, growth: section.growth, addedN });
  }
  if (leftOutNoteCount > 0) cautions.push({ kind: 'notes-left-out', noteCount: leftOutNoteCount });
  return cautions;
}
