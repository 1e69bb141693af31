/**
 * What a technician should look at before wire is cut, from the figures of a scale. A closed list of kinds with their figures; the
 * words belong to whoever shows them.
 *
 * The limits of stress are common practice and differ between practitioners (45 to 70 % of breaking in concert grands, 24 to 70 % in
 * small pianos; makers of bass strings stay below 55 to 60 % of a catalogue's figure; wire keeps a bend from 65 to 75 % on): from 60 % of the
 * standard's least strength on a look, from 70 % on a warning; below 30 % the pitch follows humidity most. Totals of 150 to 200 kN are
 * usual in modern instruments (secondary sources); which total an old plate bears, no figure here says.
 */
import type { NoteFigures } from './noteFigures.ts';
import type { TensionJump } from './tensionJumps.ts';

export const HIGH_SHARE = 0.6;
export const VERY_HIGH_SHARE = 0.7;
export const LOW_SHARE = 0.3;
/** Above the usual totals of modern instruments. */
const HIGH_TOTAL_N = 200_000;

export type ScaleCaution =
  | { readonly kind: 'stress-very-high' | 'stress-high' | 'stress-low'; readonly midi: number; readonly share: number }
  /** No table for this wire: nothing is said about breaking. */
  | { readonly kind: 'grade-unknown'; readonly midi: number }
  | { readonly kind: 'diameter-outside-table'; readonly midi: number }
  | { readonly kind: 'figures-missing'; readonly midi: number; readonly fields: NoteFigures['missing'] }
  | { readonly kind: 'rests-on-interpolated'; readonly midi: number; readonly fields: NoteFigures['interpolated'] }
  /** Stands at the lower of two notes. */
  | { readonly kind: 'tension-jump'; readonly midi: number; readonly jump: TensionJump }
  | { readonly kind: 'total-high'; readonly midi: null; readonly tensionN: number };

type JudgedFigures = {
  readonly notes: readonly NoteFigures[];
  readonly steps: readonly TensionJump[];
  readonly total: { readonly tensionN: number } | null;
};

export function scaleCautions({ notes, steps, total }: JudgedFigures): ScaleCaution[] {
  const jumps = steps
    .filter(({ standsOut }) => standsOut)
    .map((jump): ScaleCaution => ({ kind: 'tension-jump', midi: jump.fromMidi, jump }));
  const isHigh = total !== null && total.tensionN > HIGH_TOTAL_N;
  const whole: ScaleCaution[] = isHigh ? [{ kind: 'total-high', midi: null, tensionN: total.tensionN }] : [];
  return [...whole, ...notes.flatMap(noteCautions), ...jumps];
}

function noteCautions(note: NoteFigures): ScaleCaution[] {
  const { midi, missing, interpolated } = note;
  const cautions: ScaleCaution[] = [];
  if (missing.length > 0) cautions.push({ kind: 'figures-missing', midi, fields: missing });
  if (interpolated.length > 0) cautions.push({ kind: 'rests-on-interpolated', midi, fields: interpolated });
  if (note.strength?.known === false) {
    const isUnknown = note.strength.reason === 'wire-grade-unknown';
    cautions.push({ kind: isUnknown ? 'grade-unknown' : 'diameter-outside-table', midi });
  }
  return note.breakingShare === null ? cautions : [...cautions, ...stressCautions(midi, note.breakingShare)];
}

function stressCautions(midi: number, share: number): ScaleCaution[] {
  if (share >= VERY_HIGH_SHARE) return [{ kind: 'stress-very-high', midi, share }];
  if (share >= HIGH_SHARE) return [{ kind: 'stress-high', midi, share }];
  return share < LOW_SHARE ? [{ kind: 'stress-low', midi, share }] : [];
}
