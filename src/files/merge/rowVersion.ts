/** One version of a row, and when two versions are one. */
import { compareStamps, type Stamp } from '../../piano/stamp.ts';
import { isPlainObject, type PlainObject, writeTaggedJson } from '../archive/taggedJson.ts';

/** A row of any table, stamp and deletion included. */
export type RowVersion = {
  readonly id: string;
  readonly stamp?: Stamp;
  readonly deletedAt?: string;
};

/**
 * Fields that are no content: the stamp, and which take of its note is the kept one. The latter has its two names in the records and
 * in the archive, and never makes two versions rivals.
 */
const NO_CONTENT = ['stamp', 'isKept', 'keptFlag', 'setAsideByMerging'];

export function contentOf(row: RowVersion): PlainObject {
  return Object.fromEntries(
    Object.entries(row).filter(([key, value]) => !NO_CONTENT.includes(key) && value !== undefined),
  );
}

export function haveSameContent(one: RowVersion, other: RowVersion): boolean {
  return areSame(contentOf(one), contentOf(other));
}

/** Value for value; 0 and −0 differ, NaN is itself. */
export function areSame(one: unknown, other: unknown): boolean {
  if (Object.is(one, other)) return true;
  if (Array.isArray(one) || ArrayBuffer.isView(one)) return areSameLists(one, other);
  if (!isPlainObject(one) || !isPlainObject(other)) return false;
  const keys = Object.keys(one).filter((key) => one[key] !== undefined);
  const otherCount = Object.keys(other).filter((key) => other[key] !== undefined).length;
  return keys.length === otherCount && keys.every((key) => areSame(one[key], other[key]));
}

function areSameLists(one: unknown, other: unknown): boolean {
  const [list, otherList] = [one, other] as ArrayLike<unknown>[];
  if (!Array.isArray(other) && !ArrayBuffer.isView(other)) return false;
  if (Object.getPrototypeOf(one) !== Object.getPrototypeOf(other) || list?.length !== otherList?.length) return false;
  for (let index = 0; index < (list?.length ?? 0); index++)
    if (!areSame(list?.[index], otherList?.[index])) return false;
  return true;
}

export function isOlder(one: RowVersion, other: RowVersion): boolean {
  return compareStamps(one.stamp, other.stamp) === 'older';
}

/**
 * Which of two versions is shown: one that was not deleted before one that was, then the one with more edits behind it, then the one
 * whose content comes first as text. The same on every device.
 */
export function compareShown(one: RowVersion, other: RowVersion): number {
  return (
    Number(one.deletedAt !== undefined) - Number(other.deletedAt !== undefined) ||
    editCount(other) - editCount(one) ||
    compareText(versionText(one), versionText(other))
  );
}

function editCount({ stamp = {} }: RowVersion): number {
  return Object.values(stamp).reduce((sum, count) => sum + count, 0);
}

/** Content and stamp with their fields in alphabetical order. */
export function versionText(row: RowVersion): string {
  return writeTaggedJson(sorted({ content: contentOf(row), stamp: row.stamp ?? {} }));
}

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (!isPlainObject(value)) return value;
  return Object.fromEntries(
    Object.entries(value)
      .sort(([one], [other]) => compareText(one, other))
      .map(([key, item]) => [key, sorted(item)]),
  );
}

export function compareText(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0;
}
