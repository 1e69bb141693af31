/** The tables of pins, zones and outliers: their order, their words, their sheets. */
import type { CsvSheet } from '../../files/csvTable.ts';
import { midiToName } from '../../piano/note.ts';
import type { Drift } from '../../stability/drift/analyseDrift.ts';
import type { JudgedPin } from '../../stability/drift/judgedPin.ts';
import { fastestPossibleSlip, WORTH_A_LOOK } from '../../stability/nextEvidence.ts';

export type PinJudgement = 'flagged' | 'doubtful' | 'steady' | 'unknown';

export function judgementOf({ slip, isFlagged }: JudgedPin): PinJudgement {
  if (isFlagged) return 'flagged';
  if (slip.probability === null) return 'unknown';
  return slip.probability >= WORTH_A_LOOK ? 'doubtful' : 'steady';
}

/** Flagged pins first, then the likelier ones, then from left to right. */
export function pinsInOrder(pins: readonly JudgedPin[]): JudgedPin[] {
  const rank = ({ isFlagged, slip }: JudgedPin) => (isFlagged ? 2 : 0) + (slip.probability ?? -1);
  return [...pins].sort((a, b) => rank(b) - rank(a) || a.midi - b.midi || a.stringPosition - b.stringPosition);
}

export function notablePins(pins: readonly JudgedPin[]): JudgedPin[] {
  return pinsInOrder(pins).filter((pin) => ['flagged', 'doubtful'].includes(judgementOf(pin)));
}

export function pinSheet(pins: readonly JudgedPin[]): CsvSheet {
  return {
    columns: [
      'note',
      'midi',
      'string',
      'slip_cents_per_year',
      'slip_cents_per_year_u',
      'probability',
      'falls_ruled_out_beyond_cents_per_year',
      'judgement',
    ],
    rows: pinsInOrder(pins).map((pin) => [
      midiToName(pin.midi),
      pin.midi,
      pin.stringPosition,
      pin.slip.centsPerYear,
      pin.slip.standardUncertainty,
      pin.slip.probability,
      fastestPossibleSlip(pin.slip),
      judgementOf(pin),
    ]),
  };
}

export function zoneSheet(zones: Drift['zones']): CsvSheet {
  return {
    columns: ['from_note', 'to_note', 'slip_cents_per_year', 'slip_cents_per_year_u', 'probability', 'accelerating'],
    rows: zones.map((zone) => [
      midiToName(zone.fromMidi),
      midiToName(zone.toMidi),
      zone.centsPerYear,
      zone.standardUncertainty,
      zone.probability,
      zone.isAccelerating ? 'yes' : 'no',
    ]),
  };
}
