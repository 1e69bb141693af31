/** The map of own drift as its drawing, its legend and its sheet want it. */
import type { CsvSheet } from '../../files/csvTable.ts';
import { formatCents, formatNote, formatNumber, formatSigned } from '../../piano/format.ts';
import { formatMonth } from '../../piano/formatStability.ts';
import { midiToName } from '../../piano/note.ts';
import type { StringPosition } from '../../piano/reading.ts';
import { breaksAfter, type RowBreaks } from '../../piano/surveyScope.ts';
import type { Drift } from '../../stability/drift/analyseDrift.ts';
import type { OwnOffset, StringRow } from '../../stability/driftViews.ts';
import { noteTicks } from '../../ui/chartScale.ts';
import { type Level, levelRange } from '../../ui/charts/divergingScale.ts';
import type { NoteMapColumn } from '../../ui/charts/noteMapProps.ts';
import { texts } from '../../ui/texts.ts';
import { SIGMAS } from './sigmas.ts';
import { stringKey, stringNamer } from './stringNames.ts';

const words = texts.stability.map;

/** The rows' numbers of the intervals that have something to show, oldest first. */
export function shownIntervals(rows: readonly StringRow[], intervalCount: number): number[] {
  return Array.from({ length: intervalCount }, (_, k) => k).filter((k) => rows.some((row) => row.cells[k]));
}

export function mapColumns(
  rows: readonly StringRow[],
  shown: readonly number[],
  { pins }: Pick<Drift, 'pins'>,
  instrument: RowBreaks,
): NoteMapColumn[] {
  const ticks = new Set(noteTicks(instrument.compass));
  const flagged = new Set(pins.filter((pin) => pin.isFlagged).map(stringKey));
  const breaks = breaksAfter(instrument);
  const nameOf = stringNamer(pins);
  return rows.map((row, index) => {
    const cells = shown.map((k) => row.cells[k] ?? null);
    const last = cells.findLast((cell) => cell !== null);
    const next = rows[index + 1];
    const name = nameOf(row);
    return {
      key: stringKey(row),
      name: last
        ? `${words.column(name, formatCents(last.cents, last.standardUncertaintyCents))}${flagged.has(stringKey(row)) ? `, ${words.flagged}` : ''}`
        : words.columnEmpty(name),
      values: cells.map((cell) => cell && beyondChance(cell)),
      ...(ticks.has(row.midi) ? { tick: formatNote(row.midi) } : {}),
      isFlagged: flagged.has(stringKey(row)),
      endsSection: next !== undefined && breaks.some((midi) => midi >= row.midi && midi < next.midi),
    };
  });
}

/** Within two standard uncertainties of nought a cell is drawn as nought: else chance would look like drift. */
function beyondChance({ cents, standardUncertaintyCents }: OwnOffset): number {
  return Math.abs(cents) > SIGMAS * standardUncertaintyCents ? cents : 0;
}

/** Zones between the nearest columns that the map has. */
export function zoneBrackets({ zones }: Pick<Drift, 'zones'>, rows: readonly StringRow[]) {
  return zones.flatMap((zone) => {
    const inside = rows.filter((row) => row.midi >= zone.fromMidi && row.midi <= zone.toMidi);
    const [first, last] = [inside[0], inside.at(-1)];
    return first && last ? [{ fromKey: stringKey(first), toKey: stringKey(last) }] : [];
  });
}

export function rowNames({ intervals }: Pick<Drift, 'intervals'>, shown: readonly number[]): string[] {
  return shown.map((k) => formatMonth(intervals[k]?.toDate ?? ''));
}

/** @example levelMeaning(1, 2) // '+1 to +3 cents' */
export function levelMeaning(level: Level, step: number): string {
  const { from, to } = levelRange(level, step);
  const decimals = Number.isInteger(step / 2) ? 0 : step >= 0.5 ? 1 : 2;
  const signed = (value: number) => formatSigned(value, decimals);
  if (from === null) return words.below(signed(to ?? 0));
  if (to === null) return words.above(signed(from));
  return level === 0 ? words.even(formatNumber(to, decimals)) : words.range(signed(from), signed(to));
}

export function mapSheet(rows: readonly StringRow[], { intervals }: Pick<Drift, 'intervals'>): CsvSheet {
  return {
    columns: ['note', 'midi', 'string', 'from_date', 'to_date', 'own_drift_cents', 'own_drift_cents_u'],
    rows: rows.flatMap((row) =>
      row.cells.flatMap((cell, k) => {
        if (!cell) return [];
        const { fromDate = '', toDate = '' } = intervals[k] ?? {};
        const place = [midiToName(row.midi), row.midi, row.stringPosition];
        return [[...place, fromDate, toDate, cell.cents, cell.standardUncertaintyCents]];
      }),
    ),
  };
}

export function ofPosition(rows: readonly StringRow[], position: StringPosition | null): StringRow[] {
  return rows.filter((row) => position === null || row.stringPosition === position);
}
