/** Collects quiet sound before the first note and tells what the room is like. */
import { measureQuietRoom, type QuietRoom } from '../analysis/signal/quietRoom.ts';

/** Long enough to tell 49.0 Hz, the note G1, from 50 Hz hum. */
const WINDOW_S = 2;
/** A device starts by fits, and its gain settles. */
const SETTLING_S = 0.5;
/** After a strike a note sounds on. */
const AFTER_STRIKE_S = 4;

export type RoomWatch = {
  /** What the room is like, each time a stretch of quiet is full. */
  readonly push: (samples: Float32Array, hasStrike: boolean) => QuietRoom | undefined;
  /** From the first take on nothing more is told: by then the note itself says what the sound is worth. */
  readonly end: () => void;
};

export function createRoomWatch(sampleRateHz: number): RoomWatch {
  const window = new Float32Array(Math.round(WINDOW_S * sampleRateHz));
  let filledCount = 0;
  let skipCount = Math.round(SETTLING_S * sampleRateHz);
  let isOver = false;
  const restart = (pauseS: number) => {
    filledCount = 0;
    skipCount = Math.round(pauseS * sampleRateHz);
  };
  return {
    push: (samples, hasStrike) => {
      if (isOver) return undefined;
      if (hasStrike) restart(AFTER_STRIKE_S);
      const skipped = Math.min(skipCount, samples.length);
      skipCount -= skipped;
      const usedCount = Math.min(samples.length - skipped, window.length - filledCount);
      window.set(samples.subarray(skipped, skipped + usedCount), filledCount);
      filledCount += usedCount;
      if (filledCount < window.length) return undefined;
      restart(0);
      return measureQuietRoom(window, sampleRateHz);
    },
    end: () => {
      isOver = true;
    },
  };
}
