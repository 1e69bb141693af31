/** What somebody types at the torque desk: a figure, or the note to go to. */
import { type Compass, isInCompass } from '../../piano/compass.ts';
import { nameToMidi } from '../../piano/note.ts';
import { inchPoundsToNm, type TorqueUnit } from '../../piano/torque.ts';

export type TypedFault = 'not-a-number' | 'not-above-zero' | 'too-high' | 'note-outside';

export type Typed =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'note'; readonly midi: number }
  | { readonly kind: 'torque'; readonly torqueNm: number; readonly isVeryLow: boolean }
  | { readonly kind: 'fault'; readonly fault: TypedFault; readonly torqueNm: number | null };

/** Wrenches for tuning pins end at 300 in·lb, which is 34 N·m (common practice): more is a wrong unit or a slip of the finger. */
const HIGHEST_NM = 34.5;
/** About 13 in·lb, half of what a string exerts on its pin: it may be true, and it may be newton metres typed as inch-pounds. */
const VERY_LOW_NM = 1.5;

/** With point or comma; the unit may stand behind the figure and then counts before the chosen one. */
export function readTyped(text: string, unit: TorqueUnit, compass: Compass): Typed {
  const tidy = text.trim();
  if (tidy === '') return { kind: 'nothing' };
  const midi = nameToMidi(tidy);
  if (midi !== undefined)
    return isInCompass(compass, midi)
      ? { kind: 'note', midi }
      : { kind: 'fault', fault: 'note-outside', torqueNm: null };
  const parts = /^([-−+]?)(\d+(?:[.,]\d+)?)\s*(.*)$/.exec(tidy);
  const typedUnit = unitOf(parts?.[3] ?? '', unit);
  if (!parts || !typedUnit) return { kind: 'fault', fault: 'not-a-number', torqueNm: null };
  const figure = Number((parts[2] ?? '').replace(',', '.'));
  if (figure === 0 || /[-−]/.test(parts[1] ?? '')) return { kind: 'fault', fault: 'not-above-zero', torqueNm: null };
  const torqueNm = typedUnit === 'N·m' ? figure : inchPoundsToNm(figure);
  if (torqueNm > HIGHEST_NM) return { kind: 'fault', fault: 'too-high', torqueNm };
  return { kind: 'torque', torqueNm, isVeryLow: torqueNm < VERY_LOW_NM };
}

function unitOf(text: string, chosen: TorqueUnit): TorqueUnit | undefined {
  const letters = text.toLowerCase().replace(/[\s·.*-]/g, '');
  if (letters === '') return chosen;
  if (letters === 'nm') return 'N·m';
  return /^(in|inlb|inlbs|inlbf|lbin)$/.test(letters) ? 'in·lb' : undefined;
}
