/** One change of some notes of a schedule, to see what it would do. */
import type { ScheduleRow } from '../../piano/stringingRecords.ts';
import { gaugesOf, nearestGauge, seriesOf } from '../../piano/wireGauge.ts';
import { type CellEdit, setCells } from '../../stringing/schedule/editSchedule.ts';
import { isWound } from '../../stringing/schedule/scheduleRows.ts';

export type ChangeKind = 'size' | 'diameter' | 'length' | 'grade' | 'pitch';

export type TriedChange = {
  readonly fromMidi: number;
  readonly toMidi: number;
} & (
  | { readonly kind: 'size'; readonly sizes: number }
  | { readonly kind: 'diameter'; readonly diameterMm: number }
  | { readonly kind: 'length'; readonly share: number }
  | { readonly kind: 'grade'; readonly wireGrade: string }
  | { readonly kind: 'pitch'; readonly pitchStandardHz: number }
);

export type Strung = { readonly rows: readonly ScheduleRow[]; readonly pitchStandardHz: number };

/** Cells that hold nothing stay empty; a size past its series' end stays as it is. */
export function triedSchedule({ rows, pitchStandardHz }: Strung, change: TriedChange): Strung {
  if (change.kind === 'pitch') return { rows, pitchStandardHz: change.pitchStandardHz };
  const chosen = rows.filter(({ midi }) => midi >= change.fromMidi && midi <= change.toMidi);
  return {
    rows: setCells(
      rows,
      chosen.flatMap((row) => editOf(row, change)),
    ),
    pitchStandardHz,
  };
}

function editOf(row: ScheduleRow, change: Exclude<TriedChange, { kind: 'pitch' }>): CellEdit[] {
  const { midi } = row;
  switch (change.kind) {
    case 'size':
      return sizeEdit(row, change.sizes);
    case 'diameter':
      return [{ midi, change: { wireDiameterMm: change.diameterMm } }];
    case 'length': {
      if (row.speakingLengthMm === null) return [];
      const speakingLengthMm = Number((row.speakingLengthMm * (1 + change.share)).toFixed(1));
      return [{ midi, change: { speakingLengthMm } }];
    }
    case 'grade':
      return [{ midi, change: { wireGrade: change.wireGrade } }];
  }
}

/** Of the wire that carries. A wound string's wrap keeps its thickness: its outside grows with the core. */
function sizeEdit(row: ScheduleRow, sizes: number): CellEdit[] {
  const { midi, wireDiameterMm, coreDiameterMm } = row;
  const carrying = isWound(row) ? coreDiameterMm : wireDiameterMm;
  const next = carrying === null ? undefined : steppedSize(carrying, sizes);
  if (carrying === null || next === undefined) return [];
  if (!isWound(row)) return [{ midi, change: { wireDiameterMm: next } }];
  const outside = wireDiameterMm === null ? null : Number((wireDiameterMm + next - carrying).toFixed(3));
  return [{ midi, change: { coreDiameterMm: next, wireDiameterMm: outside } }];
}

/**
 * The size of the same series that lies so many numbers away; of the metric one where a diameter belongs to neither. Undefined past the
 * series' end.
 * @example steppedSize(0.8, 1) // 0.85
 */
export function steppedSize(diameterMm: number, sizes: number): number | undefined {
  const series = seriesOf([diameterMm]) ?? 'metric';
  const gauge = nearestGauge(series, diameterMm);
  const wanted = gauge && gauge.gaugeNumber + sizes;
  return gaugesOf(series).find(({ gaugeNumber }) => gaugeNumber === wanted)?.diameterMm;
}
