/** When readings stood on the screen, counted from the end of their take on the clock of the sound: negative while it sounded. */
import type { MicrophoneLog, ToldEarly, ToldTake } from './watchedMicrophone.ts';

export type ReadingDelays = {
  readonly take: ToldTake;
  readonly endS: number;
  /** Of what stood there first, early or final; null if nothing ever did. */
  readonly firstS: number | null;
  readonly finalS: number | null;
};

/** Onsets of an early reading and of its take are the same sample. */
const SAME_ONSET_S = 1e-4;

export function earlyOf(take: ToldTake, early: readonly ToldEarly[]): ToldEarly[] {
  return early.filter(({ onsetS }) => Math.abs(onsetS - take.onsetS) < SAME_ONSET_S);
}

/** @param beganS when listening began, on the clock of the sound */
export function readingDelays({ takes, early }: MicrophoneLog, beganS: number): ReadingDelays[] {
  return takes.map((take) => {
    const endS = take.startS + take.durationS + beganS;
    const shown = [take, ...earlyOf(take, early)].map(({ shownAtS }) => shownAtS ?? Infinity);
    const first = Math.min(...shown);
    return {
      take,
      endS,
      firstS: Number.isFinite(first) ? first - endS : null,
      finalS: take.shownAtS === null ? null : take.shownAtS - endS,
    };
  });
}

/** @example 'median −0.12 s, 95 % 0.05 s, longest 0.31 s' */
export function delayWords(delaysS: readonly (number | null)[]): string {
  const sorted = delaysS.filter((delay) => delay !== null).sort((a, b) => a - b);
  const at = (share: number) => (sorted[Math.floor(share * (sorted.length - 1))] ?? Number.NaN).toFixed(2);
  return `median ${at(0.5)} s, 95 % ${at(0.95)} s, longest ${at(1)} s`;
}
