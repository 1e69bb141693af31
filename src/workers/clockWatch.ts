/**
 * The audio clock against the system's. Blocks arrive late by a varying amount, never early, so of each stretch only the block
 * that was least late is told. A lateness of 1 ms that is left makes 3 ppm over five minutes; 100 ppm are 0.17 cents.
 */
import type { ClockMessage } from './listeningMessages.ts';

const STRETCH_S = 5;

type ClockPoint = Pick<ClockMessage, 'audioFrameCount' | 'systemTimeMs'>;
export type ClockWatch = { readonly push: (audioFrameCount: number, systemTimeMs: number) => ClockPoint | undefined };

export function createClockWatch(sampleRateHz: number): ClockWatch {
  let least: (ClockPoint & { lateness: number }) | undefined;
  let endsAt = STRETCH_S * sampleRateHz;
  return {
    push: (audioFrameCount, systemTimeMs) => {
      const lateness = systemTimeMs - (1000 * audioFrameCount) / sampleRateHz;
      if (least === undefined || lateness < least.lateness) least = { audioFrameCount, systemTimeMs, lateness };
      if (audioFrameCount < endsAt) return undefined;
      endsAt = audioFrameCount + STRETCH_S * sampleRateHz;
      const point = { audioFrameCount: least.audioFrameCount, systemTimeMs: least.systemTimeMs };
      least = undefined;
      return point;
    },
  };
}

export type ClockDrift =
  | {
      readonly known: true;
      /** Above zero: the audio clock counts too many samples for its stated rate, so pitches read flat. */
      readonly driftPpm: number;
      readonly driftStandardUncertaintyPpm: number;
    }
  | { readonly known: false; readonly reason: 'not-enough-evidence' };

const FEWEST_POINTS = 6;

/** Straight line through the points of the longest run (least squares, common practice). */
export function clockDrift(points: readonly ClockMessage[], sampleRateHz: number): ClockDrift {
  const run = longestRun(points);
  if (run.length < FEWEST_POINTS) return { known: false, reason: 'not-enough-evidence' };
  const timesS = run.map((point) => point.systemTimeMs / 1000);
  const aheadS = run.map((point, index) => point.audioFrameCount / sampleRateHz - (timesS[index] ?? 0));
  const meanTimeS = mean(timesS);
  const meanAheadS = mean(aheadS);
  const spread = timesS.reduce((sum, timeS) => sum + (timeS - meanTimeS) ** 2, 0);
  if (spread === 0) return { known: false, reason: 'not-enough-evidence' };
  const slope =
    timesS.reduce((sum, timeS, i) => sum + (timeS - meanTimeS) * ((aheadS[i] ?? 0) - meanAheadS), 0) / spread;
  const squares = timesS.reduce(
    (sum, timeS, i) => sum + ((aheadS[i] ?? 0) - meanAheadS - slope * (timeS - meanTimeS)) ** 2,
    0,
  );
  const uncertainty = Math.sqrt(squares / (run.length - 2) / spread);
  return { known: true, driftPpm: slope * 1e6, driftStandardUncertaintyPpm: uncertainty * 1e6 };
}

function longestRun(points: readonly ClockMessage[]): readonly ClockMessage[] {
  const runNumbers = [...new Set(points.map((point) => point.runNumber))];
  const runs = runNumbers.map((runNumber) => points.filter((point) => point.runNumber === runNumber));
  return runs.reduce((longest, run) => (run.length > longest.length ? run : longest), []);
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
