/** Strings by name: the note alone where nothing else of it is read, with its place in the unison otherwise. */
import { formatNote, formatNotes } from '../../piano/format.ts';
import type { StringPosition } from '../../piano/reading.ts';
import type { StringAddress } from '../../stability/driftViews.ts';
import { texts } from '../../ui/texts.ts';

export type StringNamer = (string: StringAddress) => string;

/**
 * Names for the strings of one instrument.
 * @example stringNamer([{ midi: 72, stringPosition: 2 }])({ midi: 72, stringPosition: 2 }) // 'C5', since no other string of a note is read
 */
export function stringNamer(strings: readonly StringAddress[]): StringNamer {
  const isAlone = positionsOf(strings).length < 2;
  return ({ midi, stringPosition }) =>
    isAlone || stringPosition === 0 ? formatNote(midi) : `${formatNote(midi)} ${positionName(stringPosition)}`;
}

/** Several strings by name, from left to right; neighbouring notes as ranges where no other strings of theirs are read. */
export function stringList(all: readonly StringAddress[], named: readonly StringAddress[]): string {
  if (positionsOf(all).length < 2) return formatNotes(named.map(({ midi }) => midi).sort((a, b) => a - b));
  return [...named].sort(byPlace).map(stringNamer(all)).join(', ');
}

export function positionName(position: StringPosition): string {
  return texts.common.stringPosition[position] ?? '';
}

export function stringKey({ midi, stringPosition }: StringAddress): string {
  return `${midi} ${stringPosition}`;
}

/** From left to right along the compass. */
export function byPlace(a: StringAddress, b: StringAddress): number {
  return a.midi - b.midi || a.stringPosition - b.stringPosition;
}

/** The string positions that occur, from left to right, whole unisons first. */
export function positionsOf(strings: readonly StringAddress[]): StringPosition[] {
  return ([0, 1, 2, 3] as const).filter((position) => strings.some((one) => one.stringPosition === position));
}
