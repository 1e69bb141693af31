/** What does not fit together in a schedule, note by note. Nothing is corrected: a person decides. */
import type { ScheduleRow } from '../../piano/stringingRecords.ts';
import type { ScheduleField } from '../../piano/wireScheduleCell.ts';
import { rowsBySection, type ScheduleRows, scheduleBreaks } from './scheduleRows.ts';

/** `fault`: no figure can come from it. `look`: possible, but mostly a slip of the pen. */
export type ScheduleComplaint = {
  readonly midi: number;
  readonly field: ScheduleField;
  readonly severity: 'fault' | 'look';
  readonly kind: ComplaintKind;
};

export type ComplaintKind =
  /** The core is as thick as the whole string, or thicker. */
  | 'core-not-thinner'
  /** A core without a wrap's metal, or a wrap without a core. */
  | 'wrap-missing'
  | 'core-missing'
  /** Longer than the string below it on the same bridge. */
  | 'length-rises'
  /** Longer or shorter by 4 % than both neighbours lead one to expect. */
  | 'length-off-line'
  /** Thicker than the string below it on the same bridge. */
  | 'diameter-rises'
  /** A wound string among plain ones. */
  | 'wound-among-plain'
  /** More strings than the note above has. */
  | 'string-count-falls';

/** Chosen: a length 4 % off the line through its neighbours is more than a bridge's curve makes (a semitone is 6 %). */
const LENGTH_REACH = Math.log(1.04);

/** @param breaksAfterMidi notes after which a section ends; those that the rows themselves show unless given */
export function checkSchedule(
  rows: ScheduleRows,
  breaksAfterMidi: readonly number[] = scheduleBreaks(rows),
): ScheduleComplaint[] {
  const sections = rowsBySection(rows, breaksAfterMidi).flatMap((section) => [
    ...section.flatMap((row, index) => neighbourComplaints(section[index - 1], row)),
    ...offLine(section),
  ]);
  return [...rows.flatMap(rowComplaints), ...sections, ...woundAbovePlain(rows)].sort((a, b) => a.midi - b.midi);
}

function rowComplaints(row: ScheduleRow): ScheduleComplaint[] {
  const { midi, coreDiameterMm: core, wireDiameterMm: whole, wrap } = row;
  const fault = (field: ScheduleField, kind: ComplaintKind): ScheduleComplaint => ({
    midi,
    field,
    severity: 'fault',
    kind,
  });
  const complaints: ScheduleComplaint[] = [];
  if (core !== null && whole !== null && core >= whole) complaints.push(fault('coreDiameterMm', 'core-not-thinner'));
  if (core !== null && wrap === null) complaints.push(fault('wrap', 'wrap-missing'));
  if (core === null && wrap !== null) complaints.push(fault('coreDiameterMm', 'core-missing'));
  return complaints;
}

function look(row: ScheduleRow, field: ScheduleField, kind: ComplaintKind): ScheduleComplaint {
  return { midi: row.midi, field, severity: 'look', kind };
}

function neighbourComplaints(below: ScheduleRow | undefined, row: ScheduleRow): ScheduleComplaint[] {
  const complaints: ScheduleComplaint[] = [];
  if (isAbove(row.speakingLengthMm, below?.speakingLengthMm))
    complaints.push(look(row, 'speakingLengthMm', 'length-rises'));
  if (isAbove(row.wireDiameterMm, below?.wireDiameterMm))
    complaints.push(look(row, 'wireDiameterMm', 'diameter-rises'));
  if (isAbove(below?.stringCount, row.stringCount)) complaints.push(look(row, 'stringCount', 'string-count-falls'));
  return complaints;
}

function isAbove(one: number | null | undefined, other: number | null | undefined): boolean {
  return one != null && other != null && one > other;
}

/** A wrong length puts its neighbours off the line too, by half as much: only the one farthest off is named. */
function offLine(section: readonly ScheduleRow[]): ScheduleComplaint[] {
  const departures = section.map((row, index) => departure(section[index - 1], row, section[index + 1]));
  return section
    .filter((_, index) => {
      const [low, here, high] = [index - 1, index, index + 1].map((at) => Math.abs(departures[at] ?? 0));
      return here !== undefined && here > LENGTH_REACH && here >= (low ?? 0) && here >= (high ?? 0);
    })
    .map((row) => look(row, 'speakingLengthMm', 'length-off-line'));
}

function departure(below: ScheduleRow | undefined, row: ScheduleRow, above: ScheduleRow | undefined): number {
  const [low, here, high] = [below, row, above].map((one) => one?.speakingLengthMm ?? null);
  if (low == null || here == null || high == null) return 0;
  return Math.log(here) - (Math.log(low) + Math.log(high)) / 2;
}

function woundAbovePlain(rows: ScheduleRows): ScheduleComplaint[] {
  const plainBelow = (index: number) =>
    rows.slice(0, index).some((row) => row.wireDiameterMm !== null && row.wrap === null && row.coreDiameterMm === null);
  return rows
    .filter((row, index) => row.wrap !== null && row.coreDiameterMm !== null && plainBelow(index))
    .map((row) => look(row, 'wrap', 'wound-among-plain'));
}
