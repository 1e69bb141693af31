/** The history of an instrument's readings, and of the work done on it, from CSV. */
import type { EventKind, SurveyStage } from '../piano/instrument.ts';
import { nameToMidi } from '../piano/note.ts';
import type { StringPosition } from '../piano/reading.ts';
import { type CsvRow, isIsoDate, numberCell, readCsvTable } from './csvTable.ts';

export type HistoryRow = {
  readonly visitedOn: string;
  readonly stage: SurveyStage;
  readonly humidityPct: number | null;
  readonly temperatureC: number | null;
  readonly midi: number;
  readonly stringPosition: StringPosition;
  readonly cents: number;
  readonly standardUncertaintyCents: number | null;
};

export type EventRow = {
  readonly happenedOn: string;
  readonly kind: EventKind;
  readonly fromMidi: number | null;
  readonly toMidi: number | null;
};

export type RowsOutcome<Row> =
  | { readonly ok: true; readonly rows: readonly Row[] }
  | { readonly ok: false; readonly message: string };

const HISTORY_COLUMNS = ['visit_date', 'stage', 'rh_percent', 'temp_c', 'note', 'string', 'cents', 'cents_u'];
const EVENT_COLUMNS = ['date', 'kind', 'from_note', 'to_note', 'remark'];
const EVENT_KINDS: readonly EventKind[] = [
  'restrung',
  'string-replaced',
  'pin-replaced',
  'block-work',
  'moved',
  'tuned',
];

/** Rows with an empty `cents` hold no reading and are passed over: a survey may list a note that was not played. */
export function readHistoryCsv(text: string): RowsOutcome<HistoryRow> {
  const table = readCsvTable(text, HISTORY_COLUMNS);
  if (!table.ok) return table;
  const rows: HistoryRow[] = [];
  for (const row of table.rows) {
    if (row.cells.cents === '') continue;
    const read = historyRow(row);
    if (typeof read === 'string') return { ok: false, message: `line ${row.line}: ${read}` };
    rows.push(read);
  }
  return { ok: true, rows };
}

function historyRow({ cells }: CsvRow): HistoryRow | string {
  const visitedOn = cells.visit_date ?? '';
  if (!isIsoDate(visitedOn)) return `visit_date has to be a date such as 2021-04-30, got "${visitedOn}"`;
  const stage = cells.stage;
  if (stage !== 'as-found' && stage !== 'as-left') return `stage has to be as-found or as-left, got "${stage}"`;
  const midi = nameToMidi(cells.note ?? '');
  if (midi === undefined || midi < 0 || midi > 127)
    return `note has to be a name such as A4 or F#3, got "${cells.note}"`;
  const string = cells.string === '' ? '0' : cells.string;
  if (string !== '0' && string !== '1' && string !== '2' && string !== '3') {
    return `string has to be 0, 1, 2 or 3, got "${string}"`;
  }
  const humidityPct = numberCell(cells.rh_percent);
  if (humidityPct === undefined || (humidityPct !== null && (humidityPct < 0 || humidityPct > 100))) {
    return `rh_percent has to be a number from 0 to 100 or empty, got "${cells.rh_percent}"`;
  }
  const temperatureC = numberCell(cells.temp_c);
  if (temperatureC === undefined) return `temp_c has to be a number or empty, got "${cells.temp_c}"`;
  const cents = numberCell(cells.cents);
  if (cents === undefined || cents === null || Math.abs(cents) > 1200) {
    return `cents has to be a number within an octave, got "${cells.cents}"`;
  }
  const uncertainty = numberCell(cells.cents_u);
  if (uncertainty === undefined || (uncertainty !== null && uncertainty < 0)) {
    return `cents_u has to be a number of at least 0 or empty, got "${cells.cents_u}"`;
  }
  return {
    visitedOn,
    stage,
    humidityPct,
    temperatureC,
    midi,
    stringPosition: Number(string) as StringPosition,
    cents,
    standardUncertaintyCents: uncertainty === 0 ? null : uncertainty,
  };
}

export function readEventsCsv(text: string): RowsOutcome<EventRow> {
  const table = readCsvTable(text, EVENT_COLUMNS.slice(0, 2));
  if (!table.ok) return table;
  const rows: EventRow[] = [];
  for (const row of table.rows) {
    const read = eventRow(row);
    if (typeof read === 'string') return { ok: false, message: `line ${row.line}: ${read}` };
    rows.push(read);
  }
  return { ok: true, rows };
}

function eventRow({ cells }: CsvRow): EventRow | string {
  const happenedOn = cells.date ?? '';
  if (!isIsoDate(happenedOn)) return `date has to be a date such as 2021-04-30, got "${happenedOn}"`;
  const kind = EVENT_KINDS.find((known) => known === cells.kind);
  if (!kind) return `kind has to be one of ${EVENT_KINDS.join(', ')}, got "${cells.kind}"`;
  const from = noteCell(cells.from_note);
  const to = noteCell(cells.to_note);
  if (from === undefined) return `from_note has to be a note name or empty, got "${cells.from_note}"`;
  if (to === undefined) return `to_note has to be a note name or empty, got "${cells.to_note}"`;
  // One note alone means just that note.
  return { happenedOn, kind, fromMidi: from ?? to, toMidi: to ?? from };
}

function noteCell(text: string | undefined): number | null | undefined {
  return text === undefined || text === '' ? null : nameToMidi(text);
}
