/** The sample clock against the system's while a survey is recorded, over every start of the microphone. */
import type { ClockOffset } from '../../piano/clock.ts';
import { clockDrift } from '../../workers/clockWatch.ts';
import type { ClockMessage } from '../../workers/listeningMessages.ts';

export type SurveyClock = {
  /** A new start: counts from here cannot be compared with those before. */
  readonly begin: (sampleRateHz: number) => void;
  readonly hear: (message: ClockMessage) => void;
  /** Null where there is not enough evidence. */
  readonly offset: () => ClockOffset | null;
};

/** More than any start has of its own. */
const RUNS_PER_START = 1e6;

export function createSurveyClock(): SurveyClock {
  let points: ClockMessage[] = [];
  let rateHz = 0;
  let startCount = 0;
  return {
    begin: (sampleRateHz) => {
      if (sampleRateHz !== rateHz) points = [];
      rateHz = sampleRateHz;
      startCount += 1;
    },
    hear: (message) => {
      points.push({ ...message, runNumber: message.runNumber + startCount * RUNS_PER_START });
    },
    offset: () => {
      const drift = clockDrift(points, rateHz);
      if (!drift.known) return null;
      return { offsetPpm: drift.driftPpm, offsetStandardUncertaintyPpm: drift.driftStandardUncertaintyPpm };
    },
  };
}
