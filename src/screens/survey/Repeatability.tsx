import { formatCount, formatSpreadCents } from '../../piano/format.ts';
import type { PooledRepeatability } from '../../survey/repeatability.ts';
import { texts } from '../../ui/texts.ts';

const words = texts.charts.repeatability;

/** What strikes of one string differ by, where enough notes were played again to tell. */
export function Repeatability({ pooled }: { readonly pooled: readonly PooledRepeatability[] }) {
  const all = pooled.find(({ register }) => register === 'all');
  if (!all) return null;
  const repeats = formatCount(all.repeatCount, words.repeat, words.repeats);
  const notes = formatCount(all.noteCount, words.note, words.notes);
  return <p>{words.sentence(formatSpreadCents(all.scatterCents), repeats, notes)}</p>;
}
