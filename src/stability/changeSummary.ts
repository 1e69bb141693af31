/** How far a whole instrument moved between two surveys. */

import { medianOf, robustScatter } from '../piano/robustStatistics.ts';
import type { NoteChange } from './change.ts';

/** Fewer strings than this give no scatter worth the name. Chosen; a larger number only says "not enough" more often. */
export const LEAST_STRINGS = 5;

export type WholeChange =
  | {
      readonly known: true;
      readonly medianCents: number;
      /** Of the median, as if the strings moved independently: a season moves whole registers, so it says how well the median is
       * read, not how well it stands for any one register. */
      readonly standardUncertaintyCents: number;
      /** Robust standard deviation of the strings about the median. */
      readonly scatterCents: number;
      readonly stringCount: number;
    }
  | { readonly known: false; readonly reason: 'not-enough-evidence' };

/** A median of normal values scatters by √(π/2) more than their mean (large samples; standing: definition). */
const MEDIAN_OVER_MEAN = Math.sqrt(Math.PI / 2);

/** The instrument's median change. */
export function wholeChange(changes: readonly NoteChange[]): WholeChange {
  if (changes.length < LEAST_STRINGS) return { known: false, reason: 'not-enough-evidence' };
  const cents = changes.map((change) => change.changeCents);
  const medianCents = medianOf(cents);
  const scatterCents = robustScatter(cents, medianCents);
  const reading = medianOf(changes.map((change) => change.standardUncertaintyCents));
  const standardUncertaintyCents = (MEDIAN_OVER_MEAN * Math.max(scatterCents, reading)) / Math.sqrt(changes.length);
  return { known: true, medianCents, standardUncertaintyCents, scatterCents, stringCount: changes.length };
}
