/** Changes to a schedule's cells. Each gives new rows; a row that does not change stays the same object, so that undo is cheap. */
import type { ScheduleRow } from '../../piano/stringingRecords.ts';
import type { RowChange, ScheduleField } from '../../piano/wireScheduleCell.ts';
import { emptyRow, type ScheduleRows } from './scheduleRows.ts';

export type CellEdit = { readonly midi: number; readonly change: RowChange };

/**
 * Sets cells as measured: what is set is no longer marked as interpolated. A note that the schedule does not hold yet is added at
 * its place. Later edits of one cell win.
 */
export function setCells(rows: ScheduleRows, edits: readonly CellEdit[]): ScheduleRow[] {
  const byNote = new Map(rows.map((row) => [row.midi, row]));
  for (const { midi, change } of edits) byNote.set(midi, changedRow(byNote.get(midi) ?? emptyRow(midi), change));
  return [...byNote.values()].sort((a, b) => a.midi - b.midi);
}

function changedRow(row: ScheduleRow, change: RowChange): ScheduleRow {
  const fields = fieldsOf(change);
  const isSame = fields.every((field) => row[field] === change[field] && !row.interpolated.includes(field));
  if (isSame) return row;
  const interpolated = row.interpolated.filter((field) => !fields.some((set) => set === field));
  return { ...row, ...change, interpolated };
}

export function fieldsOf(change: RowChange): ScheduleField[] {
  return Object.keys(change) as ScheduleField[];
}

/** From one note to another, both included, in either order. */
export type NoteRange = { readonly fromMidi: number; readonly toMidi: number };

function isInRange(midi: number, { fromMidi, toMidi }: NoteRange): boolean {
  return midi >= Math.min(fromMidi, toMidi) && midi <= Math.max(fromMidi, toMidi);
}

export function clearCells(rows: ScheduleRows, fields: readonly ScheduleField[], range: NoteRange): ScheduleRow[] {
  const edits = rows
    .filter(({ midi }) => isInRange(midi, range))
    .flatMap(({ midi }) => fields.map((field) => ({ midi, change: { [field]: null } })));
  return setCells(rows, edits);
}

/**
 * Copies the cells of the range's first note (its `fromMidi`, which may be the higher one) to the other notes of the range.
 * What was interpolated there is copied as interpolated.
 */
export function fillDown(rows: ScheduleRows, fields: readonly ScheduleField[], range: NoteRange): ScheduleRow[] {
  const source = rows.find(({ midi }) => midi === range.fromMidi);
  if (!source) return [...rows];
  const change: RowChange = Object.fromEntries(fields.map((field) => [field, source[field]]));
  const filled = setCells(
    rows,
    rows.filter(({ midi }) => midi !== source.midi && isInRange(midi, range)).map(({ midi }) => ({ midi, change })),
  );
  const marks = fields.filter((field) => source.interpolated.includes(field));
  if (marks.length === 0) return filled;
  return filled.map((row) =>
    row.midi !== source.midi && isInRange(row.midi, range)
      ? { ...row, interpolated: [...row.interpolated, ...marks] }
      : row,
  );
}
