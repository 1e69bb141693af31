/**
 * One value as one cell of a CSV file, and back: exactly, or not at all.
 *
 * Numbers are the shortest decimal figures that give back the same 64-bit number, with an E before an exponent, and INF, -INF or NaN
 * (Table Schema, version 2). Text that a spreadsheet would take for a formula, or that begins with an apostrophe, has an apostrophe
 * put before it; reading takes one off again.
 */
import { isIsoDate } from '../csvTable.ts';
import { type Cell, quotedCell } from './csvText.ts';
import type { Column, ColumnType } from './tableSpec.ts';
import { isPlainObject, readTaggedJson, specialText, writeTaggedJson } from './taggedJson.ts';

/** The cell, or undefined where the column cannot hold the value; never the empty cell. */
export type CellWriter = (value: unknown) => Cell | undefined;
/** Of a cell that is not empty: its value, or what is wrong with it. */
export type CellReader = (cell: string) => unknown;

export class UnreadableCell {
  readonly fault: string;
  constructor(fault: string) {
    this.fault = fault;
  }
}

export function cellWriter(column: Column): CellWriter {
  const write = column.type === 'text' ? textWriter() : WRITERS[column.type];
  const { oneOf, minimum = -Infinity, maximum = Infinity } = column;
  if (oneOf === undefined && column.minimum === undefined && column.maximum === undefined) return write;
  return (value) => {
    if (oneOf !== undefined && !oneOf.includes(value as string | number)) return undefined;
    if (typeof value === 'number' && (value < minimum || value > maximum)) return undefined;
    return write(value);
  };
}

export function cellReader(column: Column): CellReader {
  const read = column.type === 'text' ? textReader() : READERS[column.type];
  const { oneOf, minimum = -Infinity, maximum = Infinity } = column;
  if (oneOf === undefined && column.minimum === undefined && column.maximum === undefined) return read;
  return (cell) => {
    const value = read(cell);
    if (value instanceof UnreadableCell) return value;
    if (oneOf !== undefined && !oneOf.includes(value as string | number))
      return new UnreadableCell(`has to be one of ${oneOf.join(', ')}, got "${shortened(cell)}"`);
    if (typeof value === 'number' && (value < minimum || value > maximum))
      return new UnreadableCell(`has to be ${rangeText(minimum, maximum)}, got ${shortened(cell)}`);
    return value;
  };
}

function rangeText(minimum: number, maximum: number): string {
  return maximum === Infinity ? `at least ${minimum}` : `from ${minimum} to ${maximum}`;
}

const WRITERS: Readonly<Record<ColumnType, CellWriter>> = {
  text: (value) => (typeof value === 'string' && value !== '' ? writeText(value) : undefined),
  number: (value) => (typeof value === 'number' ? writeNumber(value) : undefined),
  integer: (value) =>
    typeof value === 'number' && Number.isSafeInteger(value) && !Object.is(value, -0) ? value : undefined,
  boolean: (value) => (typeof value === 'boolean' ? String(value) : undefined),
  date: (value) => (typeof value === 'string' && isIsoDate(value) ? value : undefined),
  time: (value) => (typeof value === 'string' && isTime(value) ? value : undefined),
  list: (value) => (Array.isArray(value) ? quotedCell(writeTaggedJson(value)) : undefined),
  object: (value) => (isPlainObject(value) ? quotedCell(writeTaggedJson(value)) : undefined),
};

const READERS: Readonly<Record<ColumnType, CellReader>> = {
  text: readText,
  number: readNumber,
  integer: (cell) => (/^-?\d{1,15}$/.test(cell) ? Number(cell) : wrong(cell, 'a whole number')),
  boolean: (cell) => (cell === 'true' || cell === 'false' ? cell === 'true' : wrong(cell, 'true or false')),
  date: (cell) => (isIsoDate(cell) ? cell : wrong(cell, 'a date such as 2021-04-30')),
  time: (cell) => (isTime(cell) ? cell : wrong(cell, 'a date and time such as 2021-04-30T09:15:00Z')),
  list: (cell) => readJson(cell, Array.isArray, 'a list in JSON, such as [1,2]'),
  object: (cell) => readJson(cell, isPlainObject, 'an object in JSON, such as {"a":1}'),
};

function wrong(cell: string, wanted: string, hint = ''): UnreadableCell {
  return new UnreadableCell(`has to be ${wanted}, got "${shortened(cell)}"${hint}`);
}

/** What a spreadsheet may take for a formula, and the apostrophe itself. Full-width signs are read as formulas by some. */
const LOOKS_LIKE_FORMULA = /^[=+\-@\t\r\n'＝＋－＠]/;
/** Half of a character: UTF-8 cannot hold it. */
const HALF_CHARACTER = /\p{Surrogate}/u;

/** An id stands in many rows one after another: the cell of the row before is used again. */
function textWriter(): CellWriter {
  let [lastValue, lastCell] = ['', WRITERS.text('')];
  return (value) => {
    if (value === lastValue) return lastCell;
    const cell = WRITERS.text(value);
    if (typeof value === 'string') [lastValue, lastCell] = [value, cell];
    return cell;
  };
}

function writeText(value: string): string | undefined {
  if (HALF_CHARACTER.test(value)) return undefined;
  return quotedCell(LOOKS_LIKE_FORMULA.test(value) ? `'${value}` : value);
}

/** Likewise: all rows that name one id then hold one text, and none of them the text of the whole file. */
function textReader(): CellReader {
  let [lastCell, lastValue] = ['', ''];
  return (cell) => {
    if (cell !== lastCell) [lastCell, lastValue] = [cell, readText(cell)];
    return lastValue;
  };
}

function readText(cell: string): string {
  return cell.startsWith("'") ? cell.slice(1) : cell;
}

function writeNumber(value: number): Cell {
  return Number.isFinite(value) && !Object.is(value, -0) ? value : specialText(value);
}

function readNumber(cell: string): number | UnreadableCell {
  const value = Number(cell);
  if (Number.isFinite(value) && isDecimal(cell)) return value;
  const special = cell.toUpperCase();
  if (special === 'INF' || special === '+INF') return Infinity;
  if (special === '-INF') return -Infinity;
  if (special === 'NAN') return Number.NaN;
  return wrong(cell, 'a number', /^-?\d+,\d+$/.test(cell) ? ' (write the decimal point as a point)' : '');
}

/**
 * Of what the language takes for a number (ECMA-262, StringToNumber), only decimals begin with none of a space and a prefix such as 0x,
 * and end without a space.
 */
function isDecimal(cell: string): boolean {
  const first = cell.charCodeAt(0);
  const last = cell.charCodeAt(cell.length - 1);
  return (
    first >= PLUS && first <= NINE && (last >= ZERO || last === POINT) && last <= NINE && !isPrefix(cell.charCodeAt(1))
  );
}

const [PLUS, POINT, ZERO, NINE] = [0x2b, 0x2e, 0x30, 0x39];
/** Of hexadecimal, octal and binary numbers: x, o and b, small and capital. */
const PREFIXES = [0x78, 0x58, 0x6f, 0x4f, 0x62, 0x42];

function isPrefix(code: number): boolean {
  return code > NINE && PREFIXES.includes(code);
}

/** As the records take it: any text that starts with a calendar date and a time of day, without line breaks. */
function isTime(value: string): boolean {
  return /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}[^\s"',]{0,20}$/.test(value) && isKnownDate(value.slice(0, 10));
}

/** Of many rows made on one day only the first one's date is looked at closely. */
function isKnownDate(date: string): boolean {
  if (date === lastDate) return true;
  if (!isIsoDate(date)) return false;
  lastDate = date;
  return true;
}

let lastDate = '';

function readJson(cell: string, isRight: (value: unknown) => boolean, wanted: string): unknown {
  const outcome = readTaggedJson(cell);
  if (!outcome.ok) return new UnreadableCell(`${outcome.fault}; it has to be ${wanted}`);
  return isRight(outcome.value) ? outcome.value : wrong(cell, wanted);
}

const LONGEST_QUOTED = 40;

/** For a complaint: one line, not too long. */
export function shortened(cell: string): string {
  const line = cell.replace(/\s+/g, ' ');
  return line.length > LONGEST_QUOTED ? `${line.slice(0, LONGEST_QUOTED)}…` : line;
}
