/** What cells of the sheet are in the schedule: rows are its notes, columns its fields. */
import type { ScheduleRow } from '../../piano/stringingRecords.ts';
import { SCHEDULE_FIELDS, type ScheduleField } from '../../piano/wireScheduleCell.ts';
import { clearCells, fillDown, type NoteRange, setCells } from '../../stringing/schedule/editSchedule.ts';
import { withoutInterpolated } from '../../stringing/schedule/interpolateEmpty.ts';
import type { CellRange } from '../../ui/sheet/sheetState.ts';

type Rows = readonly ScheduleRow[];

export function fieldsIn({ fromColumn, toColumn }: CellRange): readonly ScheduleField[] {
  return SCHEDULE_FIELDS.slice(fromColumn, toColumn + 1);
}

function notesIn(rows: Rows, { fromRow, toRow }: CellRange): NoteRange | null {
  const [from, to] = [rows[fromRow], rows[toRow]];
  return from && to ? { fromMidi: from.midi, toMidi: to.midi } : null;
}

export function clearedRange(rows: Rows, range: CellRange): Rows {
  const notes = notesIn(rows, range);
  return notes ? clearCells(rows, fieldsIn(range), notes) : rows;
}

/** From the first chosen row; where one row alone is chosen, from the one above it. */
export function filledRange(rows: Rows, range: CellRange): Rows {
  const fromRow = range.fromRow === range.toRow ? Math.max(range.fromRow - 1, 0) : range.fromRow;
  const notes = notesIn(rows, { ...range, fromRow });
  return notes ? fillDown(rows, fieldsIn(range), notes) : rows;
}

/** One value into every chosen cell. */
export function spreadValue(
  rows: Rows,
  range: CellRange,
  value: (field: ScheduleField) => Partial<ScheduleRow> | null,
) {
  const chosen = rows.slice(range.fromRow, range.toRow + 1);
  const edits = fieldsIn(range).flatMap((field) => {
    const change = value(field);
    return change ? chosen.map(({ midi }) => ({ midi, change })) : [];
  });
  return setCells(rows, edits);
}

export function withoutAllInterpolated(rows: Rows): Rows {
  return rows.map(withoutInterpolated);
}

export function interpolatedCount(rows: Rows): number {
  return rows.reduce((sum, { interpolated }) => sum + interpolated.length, 0);
}
