/** What becomes of pasted text: put in at once where all of it can be read, shown first where not. */
import type { ScheduleRow } from '../../piano/stringingRecords.ts';
import { SCHEDULE_FIELDS } from '../../piano/wireScheduleCell.ts';
import { type PasteAnchor, type PastedCells, parsePastedCells } from '../../stringing/schedule/pastedCells.ts';
import { type CellRange, isOneCell } from '../../ui/sheet/sheetState.ts';
import type { GaugeTyping } from './gaugeTyping.ts';
import { fieldsIn, spreadValue } from './rangeFields.ts';
import { typedCell } from './scheduleSheet.ts';

type Rows = readonly ScheduleRow[];

export function anchorOf(rows: Rows, { fromRow, fromColumn }: Pick<CellRange, 'fromRow' | 'fromColumn'>): PasteAnchor {
  return { midi: rows[fromRow]?.midi ?? 0, field: SCHEDULE_FIELDS[fromColumn] ?? 'stringCount' };
}

/** A single value over several chosen cells goes into each of them. Null where that is not what was pasted, or it does not fit them all. */
export function spreadPaste(rows: Rows, text: string, range: CellRange, typing: GaugeTyping): Rows | null {
  if (isOneCell(range) || /[\t;\r\n]/.test(text.trim())) return null;
  const midi = rows[range.fromRow]?.midi ?? 0;
  const isTaken = fieldsIn(range).every((field) => typedCell(midi, field, text, typing).isTaken);
  if (!isTaken) return null;
  return spreadValue(rows, range, (field) => {
    const typed = typedCell(midi, field, text, typing);
    return typed.isTaken ? typed.edit.change : null;
  });
}

/** Sizes' numbers are taken as this device takes typed ones. */
export function readPaste(rows: Rows, text: string, anchor: PasteAnchor, typing: GaugeTyping): PastedCells {
  const pasted = parsePastedCells(text, rows, anchor);
  const meant = pasted.complaints.flatMap(({ midi, field, problem }) => {
    const gauge = problem.kind === 'gauge-number' ? problem.gauges.find(({ series }) => series === typing) : undefined;
    return gauge && midi !== null && field !== null ? [{ midi, change: { [field]: gauge.diameterMm } }] : [];
  });
  if (meant.length === 0) return pasted;
  const complaints = pasted.complaints.filter(
    ({ problem }) => problem.kind !== 'gauge-number' || !problem.gauges.some(({ series }) => series === typing),
  );
  return { ...pasted, edits: [...pasted.edits, ...meant], complaints };
}

export function cellCount({ edits }: PastedCells): number {
  return edits.reduce((sum, { change }) => sum + Object.keys(change).length, 0);
}

/** All of it can be read, and nothing was left out. */
export function isWhole({ edits, complaints, unknownColumns }: PastedCells): boolean {
  return edits.length > 0 && complaints.length === 0 && unknownColumns.length === 0;
}
