/** Names of strings as a page says them. */
import { formatNote } from '../piano/format.ts';
import type { StringPosition } from '../piano/reading.ts';
import type { ReportWords } from './words.ts';

export type NamedString = { readonly midi: number; readonly stringPosition: StringPosition };

/** @example stringName({ midi: 72, stringPosition: 1 }, englishReportWords) // 'C5 left string' */
export function stringName({ midi, stringPosition }: NamedString, words: ReportWords): string {
  const position = words.string[stringPosition] ?? '';
  return position === '' ? formatNote(midi) : `${formatNote(midi)} ${position}`;
}

const MOST_NAMED = 6;

/** The first six by name and how many more there are. @param names at least one */
export function fewNames(names: readonly string[], words: ReportWords, most = MOST_NAMED): string {
  if (names.length <= most + 1) return words.list(names);
  return words.list([...names.slice(0, most), words.andMore(names.length - most)]);
}
