/** Where the power of many lines of a spectrum begins to rise together. */
import { SILENT_POWER } from './soundBands.ts';

/** One list of powers per line, all as long as there are frames. */
export type PowerLines = { readonly powers: readonly Float64Array[]; readonly frameCount: number };

export type Beginning = {
  /** With a fraction. */
  readonly frame: number;
  /** From the loudest of the quiet frames to the loudest of all, averaged over the lines that rise. */
  readonly riseDb: number;
  /** From a quarter to three quarters of the power. */
  readonly riseFrames: number;
};

/**
 * Follows the share of the rise that has come in, over the lines that rise, each line counted by how far it rises: the beginning
 * is where that share leaves zero on its way to the whole. Without a rise it is the middle.
 * @param quietCount how many frames at the beginning are surely from before it
 */
export function beginning({ powers, frameCount }: PowerLines, quietCount: number): Beginning {
  const share = new Float64Array(frameCount);
  let weightSum = 0;
  let riseSum = 0;
  for (const line of powers) {
    const before = Math.max(...line.subarray(0, quietCount)) + SILENT_POWER;
    const after = Math.max(...line) + SILENT_POWER;
    const riseDb = 10 * Math.log10(after / before);
    const weight = Math.min(20, Math.max(0, riseDb - 3)) ** 2;
    if (weight === 0) continue;
    weightSum += weight;
    riseSum += weight * riseDb;
    for (let frame = 0; frame < frameCount; frame++)
      share[frame] = (share[frame] ?? 0) + (weight * Math.max(0, (line[frame] ?? 0) - before)) / (after - before);
  }
  if (weightSum === 0) return { frame: frameCount / 2, riseDb: 0, riseFrames: frameCount };
  const frame = firstLeavingZero(share);
  return { frame, riseDb: riseSum / weightSum, riseFrames: riseFramesFrom(share, frame) };
}

/** From where half of the whole is first there, back to where next to nothing was; the last step interpolated. */
function firstLeavingZero(share: Float64Array): number {
  const whole = Math.max(...share);
  const half = share.findIndex((value) => value >= 0.5 * whole);
  const small = BEGUN_SHARE * whole;
  let frame = half;
  while (frame > 0 && (share[frame - 1] ?? 0) > small) frame--;
  return crossing(share, frame, small);
}

function riseFramesFrom(share: Float64Array, start: number): number {
  const from = Math.max(0, Math.floor(start));
  const whole = Math.max(...share.subarray(from, from + PLATEAU_WITHIN_FRAMES));
  const reach = (part: number) => {
    const frame = from + share.subarray(from).findIndex((value) => value >= part * whole);
    return crossing(share, frame, part * whole);
  };
  return reach(0.75) - reach(0.25);
}

/** Between the frame before, which lies below the level, and this one, which reaches it. */
function crossing(share: Float64Array, frame: number, level: number): number {
  const [low, high] = [share[frame - 1] ?? 0, share[frame] ?? 0];
  return frame - (high > level && high > low ? (high - Math.max(low, level)) / (high - low) : 0);
}

const PLATEAU_WITHIN_FRAMES = 12;

/** Of the whole, in power: next to nothing. */
export const BEGUN_SHARE = 0.03;
