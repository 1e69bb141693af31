/** What a stream holds, in order of time: stretches of sound, and the strikes between them. */
import type { Strike, TimedToneFrame } from './strikeEvidence.ts';

/** A long frame that ended, or a strike. All indexes count samples from the start of the stream. */
export type SoundEvent =
  | ({ readonly kind: 'frame'; readonly meanSquare: number } & TimedToneFrame)
  | ({ readonly kind: 'strike' } & Strike);

export type SoundEventQueue = {
  add(event: SoundEvent): void;
  /** Whether a strike is known so near that another one there would be the same. */
  hasStrikeNear(index: number): boolean;
  /** What happened up to `index`, in order; each event once. */
  takeUpTo(index: number): SoundEvent[];
  /** The same up to the last strike there; nothing where no strike waits. */
  takeUpToStrike(index: number): SoundEvent[];
};

/** @param sameStrikeReach of two strikes nearer to each other than this only the first is handed on */
export function createSoundEventQueue(sameStrikeReach: number): SoundEventQueue {
  let waiting: SoundEvent[] = [];
  let lastStrikeIndex = Number.NEGATIVE_INFINITY;
  const isSame = (event: SoundEvent, index: number) =>
    event.kind === 'strike' && Math.abs(event.index - index) < sameStrikeReach;
  const isNew = (event: SoundEvent) => {
    if (event.kind !== 'strike') return true;
    if (event.index < lastStrikeIndex + sameStrikeReach) return false;
    lastStrikeIndex = event.index;
    return true;
  };
  const takeUpTo = (index: number) => {
    if (waiting[0] === undefined || timeOf(waiting[0]) > index) return [];
    const due = waiting.filter((event) => timeOf(event) <= index);
    waiting = waiting.slice(due.length);
    return due.filter(isNew);
  };
  return {
    add(event) {
      const place = waiting.findLastIndex((other) => timeOf(other) <= timeOf(event));
      waiting.splice(place + 1, 0, event);
    },
    hasStrikeNear: (index) =>
      Math.abs(lastStrikeIndex - index) < sameStrikeReach || waiting.some((event) => isSame(event, index)),
    takeUpTo,
    takeUpToStrike(index) {
      const strike = waiting.findLast((event) => event.kind === 'strike' && event.index <= index);
      return strike ? takeUpTo(timeOf(strike)) : [];
    },
  };
}

const timeOf = (event: SoundEvent) => (event.kind === 'strike' ? event.index : event.endIndex);
