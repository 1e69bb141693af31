/** A schedule as a sheet of cells, and what is typed into a cell as a change of the schedule. */
import { formatNote } from '../../piano/format.ts';
import { formatWireInches, formatWireOtherwise } from '../../piano/formatStringing.ts';
import type { ScheduleRow } from '../../piano/stringingRecords.ts';
import {
  readScheduleCell,
  SCHEDULE_FIELDS,
  type ScheduleField,
  scheduleCellText,
} from '../../piano/wireScheduleCell.ts';
import type { ScheduleComplaint } from '../../stringing/schedule/checkSchedule.ts';
import type { CellEdit } from '../../stringing/schedule/editSchedule.ts';
import { isWound } from '../../stringing/schedule/scheduleRows.ts';
import type { SheetCell, SheetColumn, SheetRefusal, SheetRow } from '../../ui/sheet/sheetModel.ts';
import { texts } from '../../ui/texts.ts';
import { type GaugeTyping, namedSize, withGaugeTyping } from './gaugeTyping.ts';
import { complaintWords, refusalOf } from './sheetWords.ts';

const words = texts.stringing.sheet;

const OFFERS: Partial<Record<ScheduleField, readonly string[]>> = {
  wrap: ['copper', 'iron', 'brass'],
  bridge: ['bass', 'long'],
};

const INPUT_MODES: Readonly<Record<ScheduleField, SheetColumn['inputMode']>> = {
  stringCount: 'numeric',
  speakingLengthMm: 'decimal',
  wireDiameterMm: 'decimal',
  coreDiameterMm: 'decimal',
  wrap: 'text',
  wireGrade: 'text',
  bridge: 'text',
};

/** @param gradeNames what the grade column offers */
export function sheetColumns(gradeNames: readonly string[]): SheetColumn[] {
  return SCHEDULE_FIELDS.map((field): SheetColumn => {
    const offers = field === 'wireGrade' ? gradeNames : OFFERS[field];
    return {
      key: field,
      title: words.columns[field],
      inputMode: INPUT_MODES[field],
      isNumber: INPUT_MODES[field] !== 'text',
      ...(INPUT_MODES[field] === 'decimal' && { unit: words.units.mm }),
      ...(offers && { offers }),
    };
  });
}

export function sheetRows(rows: readonly ScheduleRow[], complaints: readonly ScheduleComplaint[]): SheetRow[] {
  return rows.map((row) => ({
    key: String(row.midi),
    name: formatNote(row.midi),
    cells: SCHEDULE_FIELDS.map((field) => sheetCell(row, field, complaints)),
  }));
}

function sheetCell(row: ScheduleRow, field: ScheduleField, complaints: readonly ScheduleComplaint[]): SheetCell {
  const own = complaints.filter((complaint) => complaint.midi === row.midi && complaint.field === field);
  const worst = own.find(({ severity }) => severity === 'fault') ?? own[0];
  const beside = sizeBeside(row, field);
  return {
    text: scheduleCellText(row, field),
    isInterpolated: row.interpolated.includes(field),
    complaint: worst ? { severity: worst.severity, words: own.map(complaintWords).join('; ') } : null,
    ...(beside !== undefined && { beside }),
  };
}

/** A wrapped string's outside has no size's number. */
function sizeBeside(row: ScheduleRow, field: ScheduleField): string | undefined {
  const diameterMm = field === 'wireDiameterMm' || field === 'coreDiameterMm' ? row[field] : null;
  if (diameterMm === null) return undefined;
  return field === 'wireDiameterMm' && isWound(row) ? formatWireInches(diameterMm) : formatWireOtherwise(diameterMm);
}

export type TypedCell =
  | { readonly isTaken: true; readonly edit: CellEdit }
  | { readonly isTaken: false; readonly refusal: SheetRefusal };

export function typedCell(midi: number, field: ScheduleField, text: string, typing: GaugeTyping): TypedCell {
  const isDiameter = field === 'wireDiameterMm' || field === 'coreDiameterMm';
  const meant = isDiameter ? namedSize(text) : completed(text, OFFERS[field]);
  const reading = withGaugeTyping(readScheduleCell(field, meant), field, typing);
  return reading.ok
    ? { isTaken: true, edit: { midi, change: reading.change } }
    : { isTaken: false, refusal: refusalOf(midi, field, reading.problem) };
}

/** The one word that begins with what was typed. @example completed('c', ['copper', 'iron']) // 'copper' */
export function completed(text: string, offers: readonly string[] = []): string {
  const typed = text.trim().toLowerCase();
  const meant = typed === '' ? [] : offers.filter((offer) => offer.startsWith(typed));
  return meant.length === 1 ? (meant[0] ?? text) : text;
}
