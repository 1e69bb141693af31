/** What the room sounds like while nothing is played: its level, and the lines that hum and fans leave in the spectrum. */
import { partialBins } from './newTones.ts';
import type { ToneFrame } from './toneFrames.ts';

export type RoomNoise = {
  /** A stretch in which nothing was played. */
  learn(tones: ToneFrame, meanSquare: number): void;
  /** Bins of the partials that stand out and do not belong to the room. */
  tonesIn(tones: ToneFrame): number[];
  /** Level of the room re a full-scale sine; null while no gap has been heard, and in digital silence. */
  levelDbfs(): number | null;
};

export function createRoomNoise(): RoomNoise {
  const meanSquares: number[] = [];
  let lines: Float64Array | undefined;
  let learnedCount = 0;
  return {
    learn(tones, meanSquare) {
      if (meanSquare < DIGITAL_SILENCE) return;
      meanSquares.push(meanSquare);
      if (meanSquares.length > HELD_STRETCHES) meanSquares.shift();
      learnedCount++;
      lines ??= new Float64Array(tones.levelsDbfs.length);
      const weight = 1 / Math.min(learnedCount, HELD_STRETCHES);
      for (let bin = 0; bin < lines.length; bin++)
        lines[bin] = (1 - weight) * (lines[bin] ?? 0) + weight * 10 ** ((tones.levelsDbfs[bin] ?? 0) / 10);
    },
    tonesIn(tones) {
      return partialBins(tones, ALIVE_BOUNDS).filter((bin) => {
        if (!lines) return true;
        const room = Math.max(lines[bin - 1] ?? 0, lines[bin] ?? 0, lines[bin + 1] ?? 0);
        return (tones.levelsDbfs[bin] ?? 0) > 10 * Math.log10(room + 1e-12) + ABOVE_ROOM_DB;
      });
    },
    levelDbfs() {
      if (meanSquares.length < LEAST_STRETCHES) return null;
      const middle = [...meanSquares].sort((a, b) => a - b)[meanSquares.length >> 1] ?? 0;
      return 10 * Math.log10(2 * middle);
    },
  };
}

const ALIVE_BOUNDS = { aboveNoiseDb: 12, rangeDb: 200 };
const ABOVE_ROOM_DB = 6;
/** Some eight seconds of gaps: a fan that starts is learned soon. */
const HELD_STRETCHES = 400;
const LEAST_STRETCHES = 5;
/** −110 dBFS: exact zeros, or a converter with nothing at its input. */
const DIGITAL_SILENCE = 5e-12;
