/** What the takes of a survey amount to, string by string. */
import type { TakeId } from '../piano/ids.ts';
import type { NoteReading } from '../piano/reading.ts';
import { isSameItem, type PlanItem } from './surveyPlan.ts';
import { bestTakeIndex } from './takeChoice.ts';

export type BookTake = {
  readonly id: TakeId;
  readonly reading: NoteReading;
  /** When it was struck, on the clock of the events. */
  readonly heardAtS: number;
  /** Since the take before; null for the first one and the first after a pause. */
  readonly sinceLastS: number | null;
  /** Undone or refused: still there, never the kept one. */
  readonly isSetAside: boolean;
};

/** `doubtful`: heard, but only in takes that cannot be used. */
export type ItemState = 'missing' | 'kept' | 'doubtful';

export type ItemStatus = {
  readonly item: PlanItem;
  readonly state: ItemState;
  /** The best take, usable or not; null where there is none. */
  readonly keptTakeId: TakeId | null;
  /** All takes but those set aside, in the order heard. */
  readonly takeIds: readonly TakeId[];
  readonly isSkipped: boolean;
};

/** One for each item of the plan, in its order. */
export function itemStatuses(
  plan: readonly PlanItem[],
  takes: readonly BookTake[],
  skippedIndexes: readonly number[],
): ItemStatus[] {
  return plan.map((item, index) => {
    const own = takes.filter((take) => !take.isSetAside && isSameItem(take.reading, item));
    const best = own[bestTakeIndex(own.map((take) => take.reading)) ?? -1];
    return {
      item,
      state: !best ? 'missing' : best.reading.quality.isUsable ? 'kept' : 'doubtful',
      keptTakeId: best?.id ?? null,
      takeIds: own.map((take) => take.id),
      isSkipped: skippedIndexes.includes(index),
    };
  });
}

/**
 * Which item comes next: the nearest missing one on the way, then a missing one left behind, then a doubtful one in the same
 * order. What was skipped is not asked for again. Null when nothing is left.
 * @param fromIndex where the walk stands; this item itself comes last
 */
export function nextIndex(statuses: readonly ItemStatus[], fromIndex: number, direction: 1 | -1): number | null {
  const count = statuses.length;
  const onTheWay = statuses.map((_, step) => (((fromIndex + direction * (step + 1)) % count) + count) % count);
  for (const wanted of ['missing', 'doubtful'])
    for (const index of onTheWay) {
      const status = statuses[index];
      if (status?.state === wanted && !status.isSkipped) return index;
    }
  return null;
}
