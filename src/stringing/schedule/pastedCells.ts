/**
 * A block of cells from a spreadsheet's clipboard (tabs) or from a list (semicolons, commas), put into a schedule. Decimal commas are
 * understood. A first line that names columns places them; a column of note names places the lines; without them the block
 * begins at the cell that was chosen. What cannot be read is told cell by cell, and everything else is still taken.
 */
import Papa from 'papaparse';
import { nameToMidi } from '../../piano/note.ts';
import {
  type CellProblem,
  readScheduleCell,
  SCHEDULE_FIELDS,
  type ScheduleField,
} from '../../piano/wireScheduleCell.ts';
import type { CellEdit } from './editSchedule.ts';
import { headerColumns, type PastedColumn } from './pastedHeader.ts';
import type { ScheduleRows } from './scheduleRows.ts';

/** The cell that the block's upper left corner goes to. */
export type PasteAnchor = { readonly midi: number; readonly field: ScheduleField };

export type PasteProblem =
  | CellProblem
  | { readonly kind: 'unknown-note'; readonly text: string }
  /** Below or above the schedule's compass, or to the right of its last column. */
  | { readonly kind: 'outside-schedule'; readonly text: string };

export type PasteComplaint = {
  /** Line and cell of the pasted text, from 1, as a person counts them. */
  readonly line: number;
  readonly cell: number;
  readonly midi: number | null;
  readonly field: ScheduleField | null;
  readonly problem: PasteProblem;
};

export type PastedCells = {
  readonly edits: readonly CellEdit[];
  readonly complaints: readonly PasteComplaint[];
  readonly hasHeader: boolean;
  /** Names of columns in the header that a schedule does not have; they were left out. */
  readonly unknownColumns: readonly string[];
};

/** @param rows the schedule that the cells go into; its notes are the only ones that are set */
export function parsePastedCells(text: string, rows: ScheduleRows, anchor: PasteAnchor): PastedCells {
  const lines = linesOf(text);
  const header = headerColumns(lines[0] ?? []);
  const body = header ? lines.slice(1) : lines;
  const columns = header ?? columnsFrom(body, anchor.field);
  const offset = header ? 2 : 1;
  const known = new Set(rows.map(({ midi }) => midi));
  const read = body.map((cells, index) => readLine(cells, index + offset, columns, anchor.midi + index, known));
  return {
    edits: read.flatMap(({ edit }) => (edit ? [edit] : [])),
    complaints: read.flatMap(({ complaints }) => complaints),
    hasHeader: header !== undefined,
    unknownColumns: (header ?? []).flatMap((column) => (column.kind === 'unknown' && column.name ? [column.name] : [])),
  };
}

function linesOf(text: string): string[][] {
  const plain = text.replace(/^\uFEFF/, '').replace(/[\r\n]+$/, '');
  const parsed = Papa.parse<string[]>(plain, { delimiter: delimiterOf(plain), skipEmptyLines: false });
  return parsed.data.map((cells) => cells.map((cell) => cell.trim()));
}

/** Commas part cells only where no tab or semicolon does, and where they cannot all be decimal commas. */
function delimiterOf(text: string): string {
  if (text.includes('\t')) return '\t';
  if (text.includes(';')) return ';';
  const isDecimal = text.split(/\r?\n/).every((line) => /^\s*\d*(,\d+)?\s*$/.test(line));
  return isDecimal ? '\t' : ',';
}

/** Without a header: a first column of note names, then the fields from the chosen one on. */
function columnsFrom(body: readonly (readonly string[])[], field: ScheduleField): PastedColumn[] {
  const first = body.map((cells) => cells[0] ?? '').filter((cell) => cell !== '');
  const hasNotes = first.length > 0 && first.every((cell) => nameToMidi(cell) !== undefined);
  const fields = SCHEDULE_FIELDS.slice(SCHEDULE_FIELDS.indexOf(field)).map(
    (one): PastedColumn => ({ kind: 'field', field: one }),
  );
  return hasNotes ? [{ kind: 'note' }, ...fields] : fields;
}

type ReadLine = { readonly edit: CellEdit | null; readonly complaints: readonly PasteComplaint[] };

function readLine(
  cells: readonly string[],
  line: number,
  columns: readonly PastedColumn[],
  midiInTurn: number,
  known: ReadonlySet<number>,
): ReadLine {
  if (cells.every((cell) => cell === '')) return { edit: null, complaints: [] };
  const noteCell = columns.findIndex(({ kind }) => kind === 'note');
  const noteText = cells[noteCell] ?? '';
  const midi = noteCell < 0 ? midiInTurn : nameToMidi(noteText);
  const at = { line, cell: Math.max(noteCell, 0) + 1, midi: midi ?? null, field: null };
  if (midi === undefined)
    return { edit: null, complaints: [{ ...at, problem: { kind: 'unknown-note', text: noteText } }] };
  if (!known.has(midi))
    return { edit: null, complaints: [{ ...at, problem: { kind: 'outside-schedule', text: cells.join(' ') } }] };
  return readCells(cells, columns, midi, line);
}

function readCells(cells: readonly string[], columns: readonly PastedColumn[], midi: number, line: number): ReadLine {
  let change = {};
  const complaints: PasteComplaint[] = [];
  for (const [index, text] of cells.entries()) {
    const column = columns[index];
    const at = { line, cell: index + 1, midi };
    if (!column && text !== '') complaints.push({ ...at, field: null, problem: { kind: 'outside-schedule', text } });
    if (column?.kind !== 'field') continue;
    const { field } = column;
    const reading = readScheduleCell(field, text);
    if (reading.ok) change = { ...change, ...reading.change };
    else complaints.push({ ...at, field, problem: reading.problem });
  }
  return { edit: Object.keys(change).length > 0 ? { midi, change } : null, complaints };
}
