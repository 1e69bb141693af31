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
