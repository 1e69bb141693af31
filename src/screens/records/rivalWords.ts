/** What two versions of a row are called, and their fields. */
import type { RivalPair } from '../../records/rivals.ts';
import { texts } from '../../ui/texts.ts';
import { deletedWords } from './binWords.ts';

const words = texts.records.rivals;

/** @example 'Visit of 4 May 2021, The attic upright' */
export function rivalWords({ table, shown, instrumentName }: RivalPair): string {
  const own = deletedWords({ table, row: shown });
  return table === 'instruments' || instrumentName === null ? own : `${own}, ${instrumentName}`;
}

/** In plain words where there are some, else the field's name with its words apart. */
export function fieldWords(path: readonly string[]): string {
  const known: Readonly<Record<string, string>> = words.fields;
  return path.map((part) => known[part] ?? part.replace(/([a-z0-9])([A-Z])/g, '$1 $2').toLowerCase()).join(', ');
}
