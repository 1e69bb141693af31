/**
 * Steps of tension between neighbouring notes that stand out from the others, and where they come from.
 *
 * A scale steps wherever the wire's size does: half a gauge is 5 % of tension, a whole one 10 %. Within a section a step stands out
 * beyond 8 % and beyond four times what the other steps scatter by (their median absolute deviation). At a break (another bridge,
 * wound to plain, another number of strings) designs step anyway; there only beyond 25 %. Both limits are chosen: no published norm was
 * found. A smaller limit calls ordinary changes of gauge, a larger one misses a wire one gauge off.
 */
import { medianOf, robustScatter } from '../../piano/robustStatistics.ts';
import type { ScheduleRow } from '../../piano/stringingRecords.ts';
import type { NoteFigures } from './noteFigures.ts';

export type TensionJump = {
  readonly fromMidi: number;
  readonly toMidi: number;
  /** Of one string, of the higher note over the lower, less one: 0.1 is 10 % more. */
  readonly tensionChange: number;
  /** What the change of length (with the pitch) alone would make; the rest is mass: diameter or wrap. */
  readonly ofLength: number;
  readonly ofMass: number;
  readonly isAtBreak: boolean;
  readonly standsOut: boolean;
};

export const LEAST_JUMP = 0.08;
export const LEAST_JUMP_AT_BREAK = 0.25;
const SIGMAS = 4;

/** Of all pairs of neighbours whose tension is known, from the lowest up. */
export function tensionSteps(
  rows: readonly ScheduleRow[],
  notes: readonly NoteFigures[],
  breaksAfterMidi: readonly number[],
): TensionJump[] {
  const steps = notes.flatMap((note, index) => {
    const next = notes[index + 1];
    const [row, nextRow] = [rows[index], rows[index + 1]];
    return next && row && nextRow ? stepBetween(note, next, row, nextRow, breaksAfterMidi) : [];
  });
  const inside = steps.filter(({ isAtBreak }) => !isAtBreak).map(({ logChange }) => logChange);
  const middle = inside.length > 0 ? medianOf(inside) : 0;
  const reach = Math.max(Math.log(1 + LEAST_JUMP), inside.length > 2 ? SIGMAS * robustScatter(inside) : 0);
  return steps.map(({ logChange, ...step }) => {
    const beyond = step.isAtBreak
      ? Math.abs(logChange) > Math.log(1 + LEAST_JUMP_AT_BREAK)
      : Math.abs(logChange - middle) > reach;
    return { ...step, standsOut: beyond };
  });
}

type LogStep = Omit<TensionJump, 'standsOut'> & { readonly logChange: number };

function stepBetween(
  note: NoteFigures,
  next: NoteFigures,
  row: ScheduleRow,
  nextRow: ScheduleRow,
  breaksAfterMidi: readonly number[],
): LogStep[] {
  if (next.midi !== note.midi + 1 || note.tensionN === null || next.tensionN === null) return [];
  if (row.speakingLengthMm === null || nextRow.speakingLengthMm === null) return [];
  const logChange = Math.log(next.tensionN / note.tensionN);
  const waveSpeedRatio = (nextRow.speakingLengthMm * next.frequencyHz) / (row.speakingLengthMm * note.frequencyHz);
  const logLength = 2 * Math.log(waveSpeedRatio);
  const isAtBreak =
    breaksAfterMidi.includes(note.midi) || note.stringCount !== next.stringCount || note.isWound !== next.isWound;
  return [
    {
      fromMidi: note.midi,
      toMidi: next.midi,
      tensionChange: Math.expm1(logChange),
      ofLength: Math.expm1(logLength),
      ofMass: Math.expm1(logChange - logLength),
      isAtBreak,
      logChange,
    },
  ];
}
