/** Which partial to draw: the loudest that beats in either reading, else the loudest that both have. */
import type { NoteReading, PartialReading } from '../../piano/reading.ts';

export type SharedPartial = {
  readonly partialNumber: number;
  readonly readings: readonly [PartialReading, PartialReading];
  readonly beats: boolean;
};

/** The partials that both readings have, from the lowest up. */
export function sharedPartials(one: NoteReading, other: NoteReading): SharedPartial[] {
  return one.partials.flatMap((partial): SharedPartial[] => {
    const match = other.partials.find(({ partialNumber }) => partialNumber === partial.partialNumber);
    if (!match) return [];
    const beats = [one, other].some(({ beating }) => beating.partialNumbers.includes(partial.partialNumber));
    return [{ partialNumber: partial.partialNumber, readings: [partial, match], beats }];
  });
}

/** Undefined where the readings share no partial. */
export function partialToShow(shared: readonly SharedPartial[]): SharedPartial | undefined {
  const beating = shared.filter(({ beats }) => beats);
  const candidates = beating.length > 0 ? beating : shared;
  return [...candidates].sort((a, b) => quieterLevel(b) - quieterLevel(a))[0];
}

function quieterLevel({ readings: [one, other] }: SharedPartial): number {
  return Math.min(one.levelDbfs, other.levelDbfs);
}
