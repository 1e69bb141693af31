/**
 * Finds stretches of exact zeros inside sounding tone: a device or driver that had nothing to deliver puts them there, and
 * what follows is shifted in time, which falsifies every frequency of the take (0.15 to 0.45 cents were measured for one
 * 10 ms stretch in 5 s of 440 Hz). A microphone in a room never gives many exact zeros in a row; a gate that closes on a
 * quiet room does, so only zeros that cut off a tone count.
 */

/** Shorter runs come from quiet 16-bit sound crossing zero. Real ones are whole device buffers: 3 ms and more. */
const SHORTEST_HOLE_S = 0.0025;
/** Longer silence is the sound having stopped, not a hole in it. */
const LONGEST_HOLE_S = 0.5;
/** 16-bit sound as quiet as this still changes by several steps from sample to sample. */
const SOUNDING_DBFS = -75;
/** How far above the room a tone must stand, so that a gate closing on the room is not a hole. */
const ABOVE_ROOM_DB = 10;
/** The level just before the zeros is looked at over about this long. */
const LEVEL_MEMORY_S = 0.01;

/** Zeros up to, not including, `endIndex` of the pushed block; they may have begun in an earlier block. */
export type ZeroRun = { readonly endIndex: number; readonly sampleCount: number };

export type HoleFinder = { readonly push: (block: Float32Array, roomLevelDbfs: number | null) => ZeroRun[] };

/** Feed it every sample in order. What it returns are the holes that ended within this block. */
export function createHoleFinder(sampleRateHz: number): HoleFinder {
  const shortest = Math.ceil(SHORTEST_HOLE_S * sampleRateHz);
  const longest = LONGEST_HOLE_S * sampleRateHz;
  const forget = 1 / (LEVEL_MEMORY_S * sampleRateHz);
  let meanSquare = 0;
  let zeroCount = 0;
  return {
    push: (block, roomLevelDbfs) => {
      const runs: ZeroRun[] = [];
      const soundingDbfs = Math.max(SOUNDING_DBFS, (roomLevelDbfs ?? -Infinity) + ABOVE_ROOM_DB);
      const soundingSquare = 10 ** (soundingDbfs / 10);
      for (const [index, sample] of block.entries()) {
        if (sample === 0) {
          zeroCount += 1;
          continue;
        }
        if (zeroCount >= shortest && zeroCount <= longest && meanSquare > soundingSquare)
          runs.push({ endIndex: index, sampleCount: zeroCount });
        if (zeroCount > longest) meanSquare = 0;
        zeroCount = 0;
        meanSquare += (sample * sample - meanSquare) * forget;
      }
      return runs;
    },
  };
}
