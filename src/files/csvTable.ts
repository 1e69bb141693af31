/**
 * A CSV file with a header line (RFC 4180; commas, semicolons or tabs) as rows of named cells. Order of columns and rows is free; unknown
 * columns are let through, missing ones named. Every complaint says which line of the file it means.
 */
import Papa from 'papaparse';

export type CsvRow = {
  /** Line in the file, the header being line 1. */
  readonly line: number;
  readonly cells: Readonly<Record<string, string>>;
};

export type CsvTable =
  | { readonly ok: true; readonly rows: readonly CsvRow[] }
  | { readonly ok: false; readonly message: string };

export function readCsvTable(text: string, requiredColumns: readonly string[]): CsvTable {
  const whole = text.replace(/^\uFEFF/, '');
  const parsed = Papa.parse<string[]>(whole, { skipEmptyLines: false, delimiter: delimiterOf(whole) });
  const lines = parsed.data;
  const header = (lines[0] ?? []).map((name) => name.trim().toLowerCase());
  if (header.length === 0 || header.every((name) => name === '')) {
    return { ok: false, message: `is empty; its first line has to name the columns ${requiredColumns.join(',')}` };
  }
  const missing = requiredColumns.filter((name) => !header.includes(name));
  if (missing.length > 0) {
    return {
      ok: false,
      message: `line 1: the column ${missing.join(', ')} is missing; the header has to name ${requiredColumns.join(',')}`,
    };
  }
  const double = header.find((name, index) => name !== '' && header.indexOf(name) !== index);
  if (double !== undefined)
    return { ok: false, message: `line 1: the column ${double} stands there twice; leave one of them` };
  const quote = parsed.errors.find((error) => error.type === 'Quotes');
  if (quote) return { ok: false, message: `line ${(quote.row ?? 0) + 1}: a quotation mark is not closed` };
  const rows: CsvRow[] = [];
  for (let index = 1; index < lines.length; index++) {
    const cells = (lines[index] ?? []).map((cell) => cell.trim());
    if (cells.every((cell) => cell === '')) continue;
    if (cells.length !== header.length) {
      return { ok: false, message: `line ${index + 1}: ${cells.length} cells where the header names ${header.length}` };
    }
    rows.push({
      line: index + 1,
      cells: Object.fromEntries(header.map((name, column) => [name, cells[column] ?? ''])),
    });
  }
  return { ok: true, rows };
}

const DELIMITERS = [',', ';', '\t'];

/** The one that parts most names in the header. */
function delimiterOf(text: string): string {
  const header = text.slice(0, text.search(/[\r\n]|$/));
  const count = (delimiter: string) => header.split(delimiter).length;
  return DELIMITERS.reduce((best, delimiter) => (count(delimiter) > count(best) ? delimiter : best));
}

/** A number with a decimal point, or null for an empty cell; undefined for anything else. */
export function numberCell(text: string | undefined): number | null | undefined {
  if (text === undefined || text === '') return null;
  const value = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/.test(text) ? Number(text) : Number.NaN;
  return Number.isFinite(value) ? value : undefined;
}

/** True for an ISO 8601 calendar date that exists. */
export function isIsoDate(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const time = Date.parse(`${text}T00:00:00Z`);
  return !Number.isNaN(time) && new Date(time).toISOString().slice(0, 10) === text;
}

export type CsvValue = string | number | null;

export type CsvSheet = {
  /** Names with units at their ends, such as `drift_cents`. */
  readonly columns: readonly string[];
  readonly rows: readonly (readonly CsvValue[])[];
};

/**
 * A sheet as CSV text (RFC 4180): commas, decimal points, CRLF, cells quoted where they need it. Null is an empty cell. Numbers keep
 * nine significant digits, more than any reading has.
 * @example writeCsvTable({ columns: ['note', 'drift_cents'], rows: [['A4', -1.5]] }) // 'note,drift_cents\r\nA4,-1.5\r\n'
 */
export function writeCsvTable({ columns, rows }: CsvSheet): string {
  const cells = rows.map((row) => row.map(cellText));
  return `${Papa.unparse([[...columns], ...cells], { newline: '\r\n' })}\r\n`;
}

function cellText(value: CsvValue): string {
  if (value === null) return '';
  return typeof value === 'number' ? String(Number(value.toPrecision(9))) : value;
}
