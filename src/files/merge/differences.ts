/** Two versions of a row side by side, field by field, for somebody to choose between. */
import { isPlainObject, type PlainObject } from '../archive/taggedJson.ts';
import { areSame, compareText, contentOf, type RowVersion } from './rowVersion.ts';

export type FieldDifference = {
  /** The way to the field. @example ['compass', 'lowestMidi'] */
  readonly path: readonly string[];
  /** Undefined where that version does not have the field. */
  readonly one: unknown;
  readonly other: unknown;
};

/** In alphabetical order of the fields; lists are compared as wholes. Nothing of stamps, and nothing of which take is kept. */
export function differencesOf(one: RowVersion, other: RowVersion): FieldDifference[] {
  return differencesIn([], contentOf(one), contentOf(other));
}

function differencesIn(path: readonly string[], one: PlainObject, other: PlainObject): FieldDifference[] {
  const keys = [...new Set([...Object.keys(one), ...Object.keys(other)])].sort(compareText);
  return keys.flatMap((key) => {
    const [left, right] = [one[key], other[key]];
    if (areSame(left, right)) return [];
    const here = [...path, key];
    if (isPlainObject(left) && isPlainObject(right)) return differencesIn(here, left, right);
    return [{ path: here, one: left, other: right }];
  });
}
