/**
 * Of each note and string of a survey one take at most is the kept one. After two people's takes met, the newest take of those kept is;
 * the others are set aside without an edit, and stand for the place again should the winner be deleted.
 */

import { compareText, type RowVersion } from './rowVersion.ts';
import { stampTextOf } from './stampText.ts';

/** A take as the records or as the archive have it. */
export type KeptFields = { readonly isKept?: boolean; readonly keptFlag?: 0 | 1; readonly setAsideByMerging?: string };

/** Whether the take was last made the kept one by somebody, whatever a merge did to it since. */
export function rawKept(row: RowVersion & KeptFields): boolean {
  return row.isKept === true || row.keptFlag === 1 || row.setAsideByMerging === stampTextOf(row.stamp);
}

/** No edit: the stamp stays. */
export function withKept<Row extends RowVersion & KeptFields>(row: Row, isKept: boolean): Row {
  const { setAsideByMerging: _, ...rest } = row;
  const flags = { ...('isKept' in row && { isKept }), ...('keptFlag' in row && { keptFlag: isKept ? 1 : 0 }) };
  return { ...rest, ...flags } as unknown as Row;
}

export type SlotTake = RowVersion &
  KeptFields & {
    readonly surveyId: string;
    readonly midi: number;
    readonly stringPosition: number;
    readonly recordedAt: string;
  };

/** As somebody last left it, whatever a merge did to it since. */
export function beforeMerging<Row extends RowVersion & KeptFields>(row: Row): Row {
  return row.setAsideByMerging === undefined ? row : withKept(row, rawKept(row));
}

/** All takes of some surveys, as they are shown, with at most one kept for each note and string. Takes that need no change are the same objects. */
export function settleKept<Row extends SlotTake>(takes: readonly Row[]): Row[] {
  const winners = new Map<string, Row>();
  for (const take of takes) {
    if (take.deletedAt !== undefined || !rawKept(take)) continue;
    const before = winners.get(slotOf(take));
    if (before === undefined || compareWinners(take, before) < 0) winners.set(slotOf(take), take);
  }
  return takes.map((take) => settled(take, winners.get(slotOf(take)) === take));
}

function slotOf({ surveyId, midi, stringPosition }: SlotTake): string {
  return `${surveyId}/${midi}/${stringPosition}`;
}

/** The newest first. */
function compareWinners(one: SlotTake, other: SlotTake): number {
  return compareText(other.recordedAt, one.recordedAt) || compareText(one.id, other.id);
}

function settled<Row extends SlotTake>(take: Row, isWinner: boolean): Row {
  const isKeptNow = take.isKept === true || take.keptFlag === 1;
  if (!rawKept(take) || take.deletedAt !== undefined || isKeptNow === isWinner) return take;
  if (isWinner) return withKept(take, true);
  return { ...withKept(take, false), setAsideByMerging: stampTextOf(take.stamp) };
}
