import type { Instrument } from '../../piano/instrument.ts';
import type { ScheduleRow } from '../../piano/stringingRecords.ts';
import type { WireGrade } from '../../piano/wireGrade.ts';
import { analyseScale, type ScaleFigures } from '../../stringing/scale/analyseScale.ts';

type Breaks = Pick<Instrument, 'bassBridgeTopMidi' | 'strutsAfterMidi'>;

/** A schedule's figures at a pitch, with the breaks that the instrument has. */
export function scaleAt(
  rows: readonly ScheduleRow[],
  { bassBridgeTopMidi, strutsAfterMidi }: Breaks,
  ownGrades: readonly WireGrade[],
  pitchStandardHz: number,
): ScaleFigures {
  return analyseScale(rows, { pitchStandardHz, ownGrades, bassBridgeTopMidi, strutsAfterMidi });
}
