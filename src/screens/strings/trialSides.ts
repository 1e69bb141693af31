/** Recordings at the bridge one after the other: what each follows on, and the trials that they make. */
import type { TakeId, TrialId } from '../../piano/ids.ts';
import type { BridgeTrial, TrialKind } from '../../piano/stringingRecords.ts';

export type TrialSide = {
  /** What was done before it was recorded; null: the string as it was. */
  readonly kind: TrialKind | null;
  readonly remark: string;
  /** Null for the string as it was. */
  readonly trialId: TrialId | null;
  readonly takeIds: readonly TakeId[];
  /** Takes that cannot be used. They are stored and belong to the trial too. */
  readonly faultyCount: number;
};

export const AS_IT_WAS: TrialSide = { kind: null, remark: '', trialId: null, takeIds: [], faultyCount: 0 };

/** The recording that this one is compared with: the last before it whose doing lasts. A pin that was held is let go again. */
export function sideBefore(sides: readonly TrialSide[], index: number): TrialSide | undefined {
  return sides.slice(0, index).findLast((side) => side.kind !== 'hold the bridge pin' && side.takeIds.length > 0);
}

/** @param sideIndex the recording that the take belongs to */
export function withTake(
  sides: readonly TrialSide[],
  sideIndex: number,
  takeId: TakeId,
  isUsable: boolean,
): TrialSide[] {
  return sides.map((side, index) =>
    index === sideIndex
      ? { ...side, takeIds: [...side.takeIds, takeId], faultyCount: side.faultyCount + (isUsable ? 0 : 1) }
      : side,
  );
}

type TrialOwner = Pick<BridgeTrial, 'instrumentId' | 'visitId' | 'surveyId' | 'midi' | 'stringPosition'>;

/** The trial that one of the recordings makes; null where there is nothing to compare yet. */
export function trialOfSide(
  sides: readonly TrialSide[],
  sideIndex: number,
  owner: TrialOwner,
  triedAt: string,
): BridgeTrial | null {
  const side = sides[sideIndex];
  const before = sideBefore(sides, sideIndex);
  if (!side?.kind || !side.trialId || side.takeIds.length === 0 || !before) return null;
  const { kind, trialId, takeIds, remark } = side;
  return { id: trialId, ...owner, kind, triedAt, takesBefore: before.takeIds, takesAfter: takeIds, remark };
}
