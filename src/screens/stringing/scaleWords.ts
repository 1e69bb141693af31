/** Sentences about a scale: cautions gathered over the notes that share them, steps, and which table the strength is from. */
import { formatNote, formatNotes, formatRange, formatShare } from '../../piano/format.ts';
import { formatGrowth, formatPull } from '../../piano/formatStringing.ts';
import { gradeNamed, type WireGrade } from '../../piano/wireGrade.ts';
import type { ScaleFigures } from '../../stringing/scale/analyseScale.ts';
import type { ScaleCaution } from '../../stringing/scale/scaleCautions.ts';
import type { TensionJump } from '../../stringing/scale/tensionJumps.ts';
import { texts } from '../../ui/texts.ts';

const words = texts.stringing.scale;

type NoteKind = Exclude<ScaleCaution['kind'], 'total-high' | 'tension-jump' | 'figures-missing'>;

/** The graver ones first. */
const KINDS: readonly NoteKind[] = [
  'stress-very-high',
  'stress-high',
  'stress-low',
  'grade-unknown',
  'diameter-outside-table',
  'rests-on-interpolated',
];

/** Steps have a list of their own. */
export function cautionSentences(cautions: readonly ScaleCaution[]): string[] {
  const whole = cautions.flatMap((one) =>
    one.kind === 'total-high' ? [words.cautions['total-high'](formatPull(one.tensionN))] : [],
  );
  return [...whole, ...KINDS.flatMap((kind) => ofKind(cautions, kind)), ...missingSentences(cautions)];
}

function ofKind(cautions: readonly ScaleCaution[], kind: NoteKind): string[] {
  const alike = cautions.filter((one) => one.kind === kind);
  if (alike.length === 0) return [];
  const notes = formatNotes(alike.flatMap(({ midi }) => midi ?? []));
  const shares = alike.flatMap((one) => ('share' in one ? one.share : []));
  return [words.cautions[kind](notes, shareRange(shares))];
}

function shareRange(shares: readonly number[]): string {
  const [low, high] = [formatShare(Math.min(...shares)), formatShare(Math.max(...shares))];
  return low === high ? low : formatRange(low, high);
}

/** One sentence for all notes that lack the same. */
function missingSentences(cautions: readonly ScaleCaution[]): string[] {
  const byFields = new Map<string, number[]>();
  for (const one of cautions) {
    if (one.kind !== 'figures-missing') continue;
    const fields = one.fields.map((field) => texts.stringing.sheet.fields[field]).join(', ');
    byFields.set(fields, [...(byFields.get(fields) ?? []), one.midi]);
  }
  return [...byFields].map(([fields, midis]) => words.cautions['figures-missing'](formatNotes(midis), fields));
}

export function jumpSentence({ fromMidi, toMidi, tensionChange, ofLength, ofMass, isAtBreak }: TensionJump): string {
  const [low, high] = [formatNote(fromMidi), formatNote(toMidi)];
  const line = words.jumps.line(low, high, formatGrowth(tensionChange), formatGrowth(ofLength), formatGrowth(ofMass));
  return isAtBreak ? line + words.jumps.atBreak : line;
}

/** Which tables the strength of the wires is from, for which notes; null where no note has one. */
export function tablesSentence(scale: ScaleFigures, grades: readonly WireGrade[]): string | null {
  const byName = new Map<string, number[]>();
  for (const { midi, strength } of scale.notes)
    if (strength?.known) byName.set(strength.gradeName, [...(byName.get(strength.gradeName) ?? []), midi]);
  if (byName.size === 0) return null;
  const named = [...byName].map(([name, midis]) =>
    words.tableNotes(name, gradeNamed(name, grades)?.source ?? '', formatNotes(midis)),
  );
  return words.tables(named.join('; '));
}
