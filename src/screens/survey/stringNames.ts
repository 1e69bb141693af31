/** How a string is called in a sentence, a box and a row: the note, and which string where the survey holds several. */
import { formatNote } from '../../piano/format.ts';
import type { StringPosition } from '../../piano/reading.ts';
import { texts } from '../../ui/texts.ts';

export type NamedString = { readonly midi: number; readonly stringPosition: StringPosition };

/**
 * Where all strings of a survey are of one position, the note says it all.
 * @example namesOf([{ midi: 61, stringPosition: 1 }, { midi: 61, stringPosition: 3 }])({ midi: 61, stringPosition: 1 }) // 'C♯4 left string'
 */
export function namesOf(strings: readonly NamedString[]): (string: NamedString) => string {
  const isOnePosition = new Set(strings.map(({ stringPosition }) => stringPosition)).size <= 1;
  return ({ midi, stringPosition }) =>
    isOnePosition ? formatNote(midi) : `${formatNote(midi)} ${texts.common.stringPosition[stringPosition]}`;
}
