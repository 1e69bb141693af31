/**
 * JSON for what plain JSON cannot say: `{"@number": "INF"}` (also `-INF`, `NaN`, `-0`), `{"@numbers": […]}` for a table of 64-bit
 * numbers, `{"@bytes": "…"}` in hexadecimal digits, `{"@absent": true}` for a field that is not there, and `{"@object": {…}}` round an
 * object of the user's own that begins with such a key. README.txt in the archive says the same.
 */

/** Stands in a row's `further` for a field that is not there at all. */
export const ABSENT: unique symbol = Symbol('absent');

export type PlainObject = Record<string, unknown>;

export function isPlainObject(value: unknown): value is PlainObject {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return false;
  return !ArrayBuffer.isView(value);
}

/** @throws {TypeError} for what no row holds: functions, symbols, big integers */
export function writeTaggedJson(value: unknown): string {
  return JSON.stringify(tagged(value));
}

function tagged(value: unknown): unknown {
  if (value === ABSENT) return { '@absent': true };
  if (typeof value === 'number') return isPlainNumber(value) ? value : { '@number': specialText(value) };
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return value;
  if (Array.isArray(value)) return value.map((item) => tagged(item === undefined ? null : item));
  if (value instanceof Float64Array) return { '@numbers': Array.from(value, tagged) };
  if (value instanceof Uint8Array) return { '@bytes': toHex(value) };
  if (!isPlainObject(value)) throw new TypeError(`a field of the kind ${typeof value} cannot be written as JSON`);
  const object = Object.fromEntries(
    Object.entries(value)
      .filter(([, item]) => item !== undefined)
      .map(([key, item]) => [key, tagged(item)]),
  );
  return Object.keys(object)[0]?.startsWith('@') ? { '@object': object } : object;
}

function isPlainNumber(value: number): boolean {
  return Number.isFinite(value) && !Object.is(value, -0);
}

/** A number that has no digits of its own in a cell or in JSON. */
export function specialText(value: number): string {
  if (Number.isNaN(value)) return 'NaN';
  if (value === 0) return '-0';
  return value > 0 ? 'INF' : '-INF';
}

export type JsonOutcome =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly fault: string };

/** Deeper than anything that a row holds; each level costs the reader a call. */
const DEEPEST = 100;
const FORBIDDEN_KEYS = ['__proto__', 'constructor', 'prototype'];

/** @param mayLackFields whether a field of an object may be `ABSENT`: in the column `further` only */
export function readTaggedJson(text: string, mayLackFields = false): JsonOutcome {
  try {
    return { ok: true, value: untagged(JSON.parse(text), { depth: 0, mayLackFields }) };
  } catch (error) {
    if (error instanceof SyntaxError) return { ok: false, fault: 'is not JSON' };
    if (error instanceof TagFault) return { ok: false, fault: error.message };
    if (error instanceof RangeError) return { ok: false, fault: 'is nested too deeply' };
    throw error;
  }
}

class TagFault extends Error {
  override readonly name = 'TagFault';
}

type Place = { readonly depth: number; readonly mayLackFields: boolean };

function untagged(value: unknown, { depth, mayLackFields }: Place): unknown {
  if (depth > DEEPEST) throw new TagFault('is nested too deeply');
  if (Array.isArray(value)) return value.map((item) => untagged(item, { depth: depth + 1, mayLackFields: false }));
  if (typeof value !== 'object' || value === null) return value;
  const [key, ...others] = Object.keys(value);
  const inside = { depth: depth + 1, mayLackFields };
  if (key?.startsWith('@') && others.length === 0) return special(key, (value as PlainObject)[key], inside);
  return untaggedObject(value as PlainObject, inside);
}

function untaggedObject(object: PlainObject, inside: Place): PlainObject {
  const entries = Object.entries(object).map(([key, item]) => {
    if (FORBIDDEN_KEYS.includes(key)) throw new TagFault(`has a field called ${key}, which no row may have`);
    return [key, untagged(item, inside)] as const;
  });
  return Object.fromEntries(entries);
}

function special(key: string, content: unknown, inside: Place): unknown {
  if (key === '@absent' && inside.mayLackFields) return ABSENT;
  if (key === '@number') return specialNumber(content);
  if (key === '@bytes') return fromHex(content);
  if (key === '@numbers' && Array.isArray(content))
    return Float64Array.from(content, (item) => {
      const number = untagged(item, inside);
      if (typeof number !== 'number') throw new TagFault('has an @numbers that holds something else');
      return number;
    });
  if (key === '@object' && isPlainObject(content)) return untaggedObject(content, inside);
  throw new TagFault(`has a field ${key} that README.txt does not explain`);
}

const SPECIAL_NUMBERS: ReadonlyMap<unknown, number> = new Map([
  ['INF', Number.POSITIVE_INFINITY],
  ['-INF', Number.NEGATIVE_INFINITY],
  ['NaN', Number.NaN],
  ['-0', -0],
]);

function specialNumber(content: unknown): number {
  const number = SPECIAL_NUMBERS.get(content);
  if (number === undefined) throw new TagFault('has an @number that is none of INF, -INF, NaN and -0');
  return number;
}

export function toHex(bytes: Uint8Array): string {
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

function fromHex(content: unknown): Uint8Array {
  if (typeof content !== 'string' || !/^([0-9a-f]{2})*$/.test(content))
    throw new TagFault('has @bytes that are not hexadecimal digits');
  return Uint8Array.from({ length: content.length / 2 }, (_, index) =>
    Number.parseInt(content.slice(2 * index, 2 * index + 2), 16),
  );
}
