/**
 * The cells of a stringing schedule as text: what a file, a sheet on the screen or a spreadsheet's clipboard holds. Decimal commas and
 * points are both understood. A cell that cannot be read says what is wrong with it.
 */
import type { ScheduleRow } from './stringingRecords.ts';
import { gaugeOfNumber, inchesToMm, type WireGauge } from './wireGauge.ts';

export type ScheduleField = Exclude<keyof ScheduleRow, 'midi' | 'interpolated'>;

/** In the order of the columns. */
export const SCHEDULE_FIELDS: readonly ScheduleField[] = [
  'stringCount',
  'speakingLengthMm',
  'wireDiameterMm',
  'coreDiameterMm',
  'wrap',
  'wireGrade',
  'bridge',
];

/** The columns of a schedule file; a note's column is `note`. */
export const SCHEDULE_COLUMNS: Readonly<Record<ScheduleField, string>> = {
  stringCount: 'strings',
  speakingLengthMm: 'speaking_length_mm',
  wireDiameterMm: 'wire_diameter_mm',
  coreDiameterMm: 'core_diameter_mm',
  wrap: 'wrap',
  wireGrade: 'wire_grade',
  bridge: 'bridge',
};

type NumberField = 'stringCount' | 'speakingLengthMm' | 'wireDiameterMm' | 'coreDiameterMm';

/** No piano string lies outside these. Chosen, with room to spare: typing errors fall outside, strings do not. */
const CELL_RANGES: Readonly<Record<NumberField, { readonly least: number; readonly most: number }>> = {
  stringCount: { least: 1, most: 4 },
  speakingLengthMm: { least: 20, most: 3000 },
  wireDiameterMm: { least: 0.3, most: 10 },
  coreDiameterMm: { least: 0.3, most: 3 },
};

/** New values of some fields of a row. */
export type RowChange = Partial<Pick<ScheduleRow, ScheduleField>>;

export type CellProblem =
  | { readonly kind: 'not-a-number'; readonly text: string }
  | { readonly kind: 'not-whole'; readonly text: string }
  | { readonly kind: 'out-of-range'; readonly text: string; readonly least: number; readonly most: number }
  /** A gauge number where millimetres are meant; it has a size in each series. */
  | { readonly kind: 'gauge-number'; readonly text: string; readonly gauges: readonly WireGauge[] }
  /** Thousandths or decimals of an inch where millimetres are meant. */
  | { readonly kind: 'inches'; readonly text: string; readonly diameterMm: number }
  | { readonly kind: 'not-one-of'; readonly text: string; readonly words: readonly string[] };

export type CellReading =
  | { readonly ok: true; readonly change: RowChange }
  | { readonly ok: false; readonly problem: CellProblem };

/**
 * An empty cell (or a dash) is null.
 * @example readScheduleCell('speakingLengthMm', '412,5') // { ok: true, change: { speakingLengthMm: 412.5 } }
 */
export function readScheduleCell(field: ScheduleField, text: string): CellReading {
  const word = text.trim().replace(/^[-–—]$/, '');
  switch (field) {
    case 'wrap':
      return readWord(word, WRAP_WORDS, (wrap) => ({ wrap }));
    case 'bridge':
      return readWord(word, BRIDGE_WORDS, (bridge) => ({ bridge }));
    case 'wireGrade':
      return { ok: true, change: { wireGrade: word === '' ? null : word } };
    default:
      return readNumber(field, word);
  }
}

const WRAP_WORDS: ReadonlyMap<string, ScheduleRow['wrap']> = new Map([
  ['copper', 'copper'],
  ['iron', 'iron'],
  ['brass', 'brass'],
]);
const BRIDGE_WORDS: ReadonlyMap<string, ScheduleRow['bridge']> = new Map([
  ['bass', 'bass'],
  ['long', 'long'],
]);

function readWord<Value>(
  text: string,
  words: ReadonlyMap<string, Value>,
  change: (value: Value | null) => RowChange,
): CellReading {
  if (text === '') return { ok: true, change: change(null) };
  const value = words.get(text.toLowerCase());
  if (value !== undefined) return { ok: true, change: change(value) };
  return { ok: false, problem: { kind: 'not-one-of', text, words: [...words.keys()] } };
}

function readNumber(field: NumberField, text: string): CellReading {
  if (text === '') return { ok: true, change: { [field]: null } };
  const value = numberIn(text);
  if (value === undefined) return { ok: false, problem: { kind: 'not-a-number', text } };
  const { least, most } = CELL_RANGES[field];
  if (value < least || value > most) return { ok: false, problem: rangeProblem(field, value, text) };
  if (field === 'stringCount' && !Number.isInteger(value)) return { ok: false, problem: { kind: 'not-whole', text } };
  return { ok: true, change: { [field]: value } };
}

/**
 * A number with a decimal point or comma, with or without `mm` behind it; undefined for anything else. A sign for thousands is not
 * understood, since it cannot be told from a decimal one.
 */
export function numberIn(text: string): number | undefined {
  const plain = text
    .trim()
    .replace(/\s*mm$/i, '')
    .replace(',', '.');
  return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : undefined;
}

function rangeProblem(field: NumberField, value: number, text: string): CellProblem {
  const isDiameter = field === 'wireDiameterMm' || field === 'coreDiameterMm';
  const gauges = (['metric', 'inch'] as const).flatMap((series) => gaugeOfNumber(series, value) ?? []);
  if (isDiameter && gauges.length > 0) return { kind: 'gauge-number', text, gauges };
  if (isDiameter && value >= 0.02 && value < 0.3) return { kind: 'inches', text, diameterMm: inchesToMm(value) };
  return { kind: 'out-of-range', text, ...CELL_RANGES[field] };
}

/** One sentence in English, for the command line and for files. @example // 'wrap has to be copper, iron, brass or empty, got "tin"' */
export function describeCellProblem(field: ScheduleField, problem: CellProblem): string {
  const column = SCHEDULE_COLUMNS[field];
  const got = `got "${problem.text}"`;
  switch (problem.kind) {
    case 'not-a-number':
      return `${column} has to be a number or empty, ${got}`;
    case 'not-whole':
      return `${column} has to be a whole number, ${got}`;
    case 'out-of-range':
      return `${column} has to be from ${problem.least} to ${problem.most}, ${got}`;
    case 'gauge-number':
      return `${column} has to be in millimetres, ${got}; as a gauge number that is ${sizesOf(problem.gauges)}`;
    case 'inches':
      return `${column} has to be in millimetres, ${got}; in inches that is ${problem.diameterMm.toFixed(3)} mm`;
    case 'not-one-of':
      return `${column} has to be ${problem.words.join(', ')} or empty, ${got}`;
  }
}

function sizesOf(gauges: readonly WireGauge[]): string {
  return gauges.map(({ diameterMm, series }) => `${diameterMm.toFixed(3)} mm (${series} series)`).join(' or ');
}

/** A cell's value as text that readScheduleCell reads back: decimal point, empty for null. */
export function scheduleCellText(row: ScheduleRow, field: ScheduleField): string {
  const value = row[field];
  return value === null ? '' : String(value);
}
