/** A stringing schedule as CSV: one row a note, the columns of the command line's `scale`, plus `bridge` and `interpolated` where known. */
import Papa from 'papaparse';
import { midiToName, nameToMidi } from '../piano/note.ts';
import type { ScheduleRow } from '../piano/stringingRecords.ts';
import {
  describeCellProblem,
  type RowChange,
  readScheduleCell,
  SCHEDULE_COLUMNS,
  SCHEDULE_FIELDS,
  type ScheduleField,
  scheduleCellText,
} from '../piano/wireScheduleCell.ts';
import { type CsvRow, readCsvTable } from './csvTable.ts';

export type ScheduleCsv =
  | { readonly ok: true; readonly rows: readonly ScheduleRow[] }
  | { readonly ok: false; readonly message: string };

/** Columns that have to be there; the others may be left out. */
const REQUIRED_COLUMNS = [
  'note',
  SCHEDULE_COLUMNS.stringCount,
  SCHEDULE_COLUMNS.speakingLengthMm,
  SCHEDULE_COLUMNS.wireDiameterMm,
];
const INTERPOLATED_COLUMN = 'interpolated';
/** No piano goes beyond these: C0 and B8. */
const LOWEST_MIDI = 12;
const HIGHEST_MIDI = 119;

/** Rows come back ascending by note. A complaint names line, column and note. */
export function readScheduleCsv(text: string): ScheduleCsv {
  const table = readCsvTable(text, REQUIRED_COLUMNS);
  if (!table.ok) return table;
  const rows = new Map<number, { readonly line: number; readonly row: ScheduleRow }>();
  for (const csvRow of table.rows) {
    const row = scheduleRow(csvRow);
    if (typeof row === 'string') return { ok: false, message: `line ${csvRow.line}: ${row}` };
    const earlier = rows.get(row.midi);
    if (earlier) {
      const name = midiToName(row.midi);
      return {
        ok: false,
        message: `line ${csvRow.line}: ${name} stands in line ${earlier.line} already; leave one of them`,
      };
    }
    rows.set(row.midi, { line: csvRow.line, row });
  }
  if (rows.size === 0) return { ok: false, message: 'holds no note; it needs one row a note under the header' };
  return { ok: true, rows: [...rows.values()].map(({ row }) => row).sort((a, b) => a.midi - b.midi) };
}

function scheduleRow({ cells }: CsvRow): ScheduleRow | string {
  const midi = nameToMidi(cells.note ?? '');
  if (midi === undefined || midi < LOWEST_MIDI || midi > HIGHEST_MIDI)
    return `note has to be a name such as A4 or F#3, got "${cells.note}"`;
  let change: RowChange = {};
  for (const field of SCHEDULE_FIELDS) {
    const reading = readScheduleCell(field, cells[SCHEDULE_COLUMNS[field]] ?? '');
    if (!reading.ok) return `${midiToName(midi)}: ${describeCellProblem(field, reading.problem)}`;
    change = { ...change, ...reading.change };
  }
  const row = { ...EMPTY, ...change, midi };
  const interpolated = interpolatedFields(cells[INTERPOLATED_COLUMN] ?? '');
  if (typeof interpolated === 'string') return `${midiToName(midi)}: ${interpolated}`;
  return woundFault(row) ?? { ...row, interpolated };
}

const EMPTY: Omit<ScheduleRow, 'midi'> = {
  stringCount: null,
  speakingLengthMm: null,
  wireDiameterMm: null,
  coreDiameterMm: null,
  wrap: null,
  wireGrade: null,
  bridge: null,
  interpolated: [],
};

function interpolatedFields(text: string): ScheduleField[] | string {
  const names = text.split(/\s+/).filter((name) => name !== '');
  const fields = names.map((name) => SCHEDULE_FIELDS.find((field) => SCHEDULE_COLUMNS[field] === name));
  const unknown = names.find((_, index) => fields[index] === undefined);
  if (unknown !== undefined) return `interpolated has to name columns of a schedule, got "${unknown}"`;
  return fields.flatMap((field) => field ?? []);
}

function woundFault({ midi, coreDiameterMm, wireDiameterMm, wrap }: ScheduleRow): string | undefined {
  const name = midiToName(midi);
  if (coreDiameterMm !== null && wrap === null)
    return `${name}: wrap is empty and core_diameter_mm is ${coreDiameterMm}; name the wrap's metal, or leave both empty for plain wire`;
  if (coreDiameterMm === null && wrap !== null)
    return `${name}: core_diameter_mm is empty and wrap is ${wrap}; give the core, or leave both empty for plain wire`;
  if (coreDiameterMm !== null && wireDiameterMm !== null && coreDiameterMm >= wireDiameterMm)
    return `${name}: core_diameter_mm has to be below wire_diameter_mm, which is over the wrap, got ${coreDiameterMm} and ${wireDiameterMm}`;
  return undefined;
}

/** All columns, decimal points, lines ended as RFC 4180 says. */
export function writeScheduleCsv(rows: readonly ScheduleRow[]): string {
  const header = ['note', ...SCHEDULE_FIELDS.map((field) => SCHEDULE_COLUMNS[field]), INTERPOLATED_COLUMN];
  const lines = rows.map((row) => [
    midiToName(row.midi),
    ...SCHEDULE_FIELDS.map((field) => scheduleCellText(row, field)),
    SCHEDULE_FIELDS.filter((field) => row.interpolated.includes(field))
      .map((field) => SCHEDULE_COLUMNS[field])
      .join(' '),
  ]);
  return `${Papa.unparse([header, ...lines])}\r\n`;
}
