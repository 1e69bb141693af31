/** A comparison of two surveys as the chart and its table want it. */
import { formatCents, formatNote } from '../../piano/format.ts';
import type { StringPosition } from '../../piano/reading.ts';
import type { NoteChange } from '../../stability/change.ts';
import type { ChartSymbolShape } from '../../ui/ChartSymbol.tsx';
import type { NotePoint, NoteSeries } from '../../ui/NotesChart.tsx';
import { texts } from '../../ui/texts.ts';

/** How many standard uncertainties the bars reach either way. */
export const BAR_SIGMAS = 2;

const POSITIONS: readonly StringPosition[] = [0, 1, 2, 3];
const SHAPES: Record<StringPosition, ChartSymbolShape> = { 0: 'disc', 1: 'triangle', 2: 'disc', 3: 'square' };

/** One series for each string position that occurs; where three strings of a note are there they stand side by side. */
export function changeSeries(notes: readonly NoteChange[]): NoteSeries[] {
  return POSITIONS.flatMap((position) => {
    const own = notes.filter((note) => note.stringPosition === position);
    if (own.length === 0) return [];
    return [{ name: stringName(position), shape: SHAPES[position], points: own.map(toPoint) }];
  });
}

/** The strings of a note stand this far apart along the axis, in notes. */
const STRING_SPACING = 0.25;

function toPoint(note: NoteChange): NotePoint {
  const shift = note.stringPosition === 0 ? 0 : (note.stringPosition - 2) * STRING_SPACING;
  const reach = BAR_SIGMAS * note.standardUncertaintyCents;
  const name = note.stringPosition === 0 ? '' : ` ${stringName(note.stringPosition)}`;
  return {
    x: note.midi + shift,
    y: note.changeCents,
    low: note.changeCents - reach,
    high: note.changeCents + reach,
    detail: `${formatNote(note.midi)}${name}: ${formatCents(note.changeCents, note.standardUncertaintyCents)}`,
  };
}

export function stringName(position: StringPosition): string {
  return texts.common.stringPosition[position] ?? '';
}
