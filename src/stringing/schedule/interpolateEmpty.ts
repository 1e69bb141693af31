/**
 * Fills cells that nobody measured between measured ones, and marks them. Common practice for speaking lengths: their logarithm
 * runs nearly straight along a bridge, so it is taken straight between the two measured notes around, never across a break and never
 * beyond the last measured note. Diameters run straight too, and are set to a size of the series that both neighbours belong to.
 * Words and string counts are filled only where both neighbours say the same.
 */
import type { ScheduleRow } from '../../piano/stringingRecords.ts';
import { type GaugeSeries, nearestGauge, seriesOf } from '../../piano/wireGauge.ts';
import { type RowChange, SCHEDULE_FIELDS, type ScheduleField } from '../../piano/wireScheduleCell.ts';
import { fieldsOf } from './editSchedule.ts';
import { isWound, rowsBySection, type ScheduleRows, scheduleBreaks } from './scheduleRows.ts';

/**
 * @param breaksAfterMidi notes after which a section ends; those that the rows themselves show unless given
 * @returns new rows, in the same order; figures that were interpolated before are made anew from what was measured
 */
export function interpolateEmpty(
  rows: ScheduleRows,
  breaksAfterMidi: readonly number[] = scheduleBreaks(rows),
): ScheduleRow[] {
  return rowsBySection(rows.map(withoutInterpolated), breaksAfterMidi).flatMap(filledSection);
}

/** Takes back what was interpolated and leaves what was measured. */
export function withoutInterpolated(row: ScheduleRow): ScheduleRow {
  if (row.interpolated.length === 0) return row;
  const cleared: RowChange = Object.fromEntries(
    SCHEDULE_FIELDS.filter((field) => row.interpolated.includes(field)).map((field) => [field, null]),
  );
  return { ...row, ...cleared, interpolated: [] };
}

function filledSection(section: ScheduleRow[]): ScheduleRow[] {
  return section.map((row) => {
    const change: RowChange = Object.assign(
      {},
      ...SCHEDULE_FIELDS.map((field) => (row[field] === null ? between(section, row, field) : {})),
    );
    const filled = fieldsOf(change);
    return filled.length === 0 ? row : { ...row, ...change, interpolated: filled };
  });
}

function between(section: readonly ScheduleRow[], row: ScheduleRow, field: ScheduleField): RowChange {
  const below = section.findLast((other) => other.midi < row.midi && other[field] !== null);
  const above = section.find((other) => other.midi > row.midi && other[field] !== null);
  if (!below || !above) return {};
  const share = (row.midi - below.midi) / (above.midi - below.midi);
  if (field === 'speakingLengthMm') return lengthBetween(below, above, share);
  if (field === 'wireDiameterMm' || field === 'coreDiameterMm') return diameterBetween(below, above, share, field);
  return below[field] === above[field] ? { [field]: below[field] } : {};
}

function lengthBetween(below: ScheduleRow, above: ScheduleRow, share: number): RowChange {
  if (below.speakingLengthMm === null || above.speakingLengthMm === null) return {};
  const logLength = (1 - share) * Math.log(below.speakingLengthMm) + share * Math.log(above.speakingLengthMm);
  return { speakingLengthMm: Number(Math.exp(logLength).toFixed(1)) };
}

function diameterBetween(
  below: ScheduleRow,
  above: ScheduleRow,
  share: number,
  field: 'wireDiameterMm' | 'coreDiameterMm',
): RowChange {
  const low = below[field];
  const high = above[field];
  if (low === null || high === null || isWound(below) !== isWound(above)) return {};
  if (low === high) return { [field]: low };
  const diameterMm = (1 - share) * low + share * high;
  const isOverWrap = field === 'wireDiameterMm' && isWound(below);
  const series = isOverWrap ? undefined : seriesOf([low, high]);
  return { [field]: series ? sizeOf(series, diameterMm) : Number(diameterMm.toFixed(3)) };
}

function sizeOf(series: GaugeSeries, diameterMm: number): number {
  return nearestGauge(series, diameterMm)?.diameterMm ?? diameterMm;
}
