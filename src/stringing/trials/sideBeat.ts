/** The beat of one partial in the takes of one side of a trial. */
import type { NoteReading, PartialReading } from '../../piano/reading.ts';
import { deepestBeat, depthToRatio, heardS, wouldShow } from '../falseBeats/beatStrength.ts';

/** A partial's beat in one take. `absent`: it would have shown. `unseen`: the partial was not measured, or too weak to tell. */
export type TakeBeat =
  | {
      readonly kind: 'beat';
      readonly ratio: number;
      readonly rateHz: number;
      readonly rateStandardUncertaintyHz: number;
      /** Beats that fit into what was heard of the partial. */
      readonly cycleCount: number;
    }
  /** With how many would have fitted, at the rate that was looked for. */
  | { readonly kind: 'absent'; readonly cycleCount: number }
  | { readonly kind: 'unseen' };

/** What the beats of several takes are together. */
export type SideBeat = {
  /** Mean amplitude ratio of the beat's components; 0 where it is absent. */
  readonly ratio: number;
  /** Null where no take has the beat. */
  readonly rateHz: number | null;
  readonly rateStandardUncertaintyHz: number | null;
  /** Takes that could tell. */
  readonly takeCount: number;
  /** Fewest beats that fit, or would have fitted, into a take that could tell; null where none could. */
  readonly cycleCount: number | null;
};

export function partialOf(take: NoteReading, partialNumber: number): PartialReading | undefined {
  return take.partials.find((partial) => partial.partialNumber === partialNumber);
}

export type Reference = { readonly rateHz: number; readonly ratio: number };

/** The deepest beat of the partial in any take: what has to be seen, or seen to be gone. */
export function referenceBeat(partialNumber: number, takes: readonly NoteReading[]): Reference | undefined {
  const beats = takes.flatMap((take) => {
    const partial = partialOf(take, partialNumber);
    return (partial && deepestBeat(partial)) ?? [];
  });
  const deepest = beats.reduce<(typeof beats)[number] | undefined>(
    (a, b) => (a && a.depthDb >= b.depthDb ? a : b),
    undefined,
  );
  return deepest && { rateHz: deepest.rateHz, ratio: depthToRatio(deepest.depthDb) };
}

export function takeBeat(take: NoteReading, partialNumber: number, { rateHz, ratio }: Reference): TakeBeat {
  const partial = partialOf(take, partialNumber);
  if (!partial) return { kind: 'unseen' };
  const beat = deepestBeat(partial);
  if (beat) {
    const { depthDb, rateStandardUncertaintyHz } = beat;
    const cycleCount = beat.rateHz * heardS(partial, take.durationS);
    return { kind: 'beat', ratio: depthToRatio(depthDb), rateHz: beat.rateHz, rateStandardUncertaintyHz, cycleCount };
  }
  // Half as deep is what it may have become without having gone.
  return wouldShow(partial, take.durationS, rateHz, ratio / 2)
    ? { kind: 'absent', cycleCount: rateHz * heardS(partial, take.durationS) }
    : { kind: 'unseen' };
}

/** @param rateScatterHz what strikes differ by in a rate, besides the fit's own uncertainty */
export function sideBeat(
  takes: readonly TakeBeat[],
  rateScatterHz: (rateHz: number, cycleCount: number) => number,
): SideBeat {
  const told = takes.flatMap((take) => (take.kind === 'unseen' ? [] : take));
  const beats = told.flatMap((take) => (take.kind === 'beat' ? take : []));
  const weights = beats.map(
    ({ rateHz, rateStandardUncertaintyHz, cycleCount }) =>
      1 / (rateStandardUncertaintyHz ** 2 + rateScatterHz(rateHz, cycleCount) ** 2),
  );
  const weightSum = weights.reduce((sum, weight) => sum + weight, 0);
  const rateSum = beats.reduce((sum, { rateHz }, index) => sum + rateHz * (weights[index] ?? 0), 0);
  return {
    ratio: told.length === 0 ? 0 : beats.reduce((sum, { ratio }) => sum + ratio, 0) / told.length,
    rateHz: beats.length === 0 ? null : rateSum / weightSum,
    rateStandardUncertaintyHz: beats.length === 0 ? null : 1 / Math.sqrt(weightSum),
    takeCount: told.length,
    cycleCount: told.length === 0 ? null : Math.min(...told.map(({ cycleCount }) => cycleCount)),
  };
}
