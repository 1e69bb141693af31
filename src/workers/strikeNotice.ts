/**
 * Tells at once that something was struck, so that the player sees the tool listen. For the eye only: what counts as a take,
 * and where it begins, the take splitter decides.
 */

const FRAME_S = 0.01;
/** A strike rises at least this much within one frame; a tone that beats rises slower. Lower shows strikes where there are none. */
const RISE_DB = 10;
const ABOVE_ROOM_DB = 15;
/** The same strike is not told twice: hammer noise and tone may rise one after the other. */
const PAUSE_S = 0.25;
/** How fast the level that a rise is compared with follows: a share of each frame. */
const FOLLOW = 0.3;
/** Taken for the room until its level is known. */
const ASSUMED_ROOM_DBFS = -60;

/** Returns the indexes in the block at which strikes were noticed. */
export type StrikeNotice = { readonly push: (block: Float32Array, roomLevelDbfs: number | null) => number[] };

export function createStrikeNotice(sampleRateHz: number): StrikeNotice {
  const frameSamples = Math.round(FRAME_S * sampleRateHz);
  const rise = 10 ** (RISE_DB / 10);
  let beforeSquare: number | undefined;
  let squares = 0;
  let frameCount = 0;
  let sinceStrike = Infinity;
  const isStrike = (square: number, roomDbfs: number) =>
    sinceStrike >= PAUSE_S * sampleRateHz &&
    beforeSquare !== undefined &&
    square > beforeSquare * rise &&
    square > 10 ** ((roomDbfs + ABOVE_ROOM_DB) / 10);
  return {
    push: (block, roomLevelDbfs) => {
      const strikes: number[] = [];
      for (const [index, sample] of block.entries()) {
        squares += sample * sample;
        frameCount += 1;
        sinceStrike += 1;
        if (frameCount < frameSamples) continue;
        const square = squares / frameCount;
        if (isStrike(square, roomLevelDbfs ?? ASSUMED_ROOM_DBFS)) {
          strikes.push(index);
          sinceStrike = 0;
        }
        beforeSquare = beforeSquare === undefined ? square : beforeSquare + FOLLOW * (square - beforeSquare);
        squares = 0;
        frameCount = 0;
      }
      return strikes;
    },
  };
}
