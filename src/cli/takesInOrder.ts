/** The takes of one recording, measured on several threads, with the same result as one after another. */
import type { HeardTake } from '../survey/assembleSurvey.ts';
import { heardTakeOf, measureOptionsOf, type SurveyRecordingOptions } from '../survey/surveyRecording.ts';
import type { Segment } from '../survey/takeSplitter.ts';
import { createTakesInOrder } from '../survey/takesInOrder.ts';
import type { ThreadPool } from './threadPool.ts';

export type HeardTakes = {
  /** Resolves once there is room for more, so that a long recording does not pile up in memory. */
  add(segment: Segment): Promise<void>;
  finish(): Promise<HeardTake[]>;
};

/** Takes that may wait for each thread. */
const TAKES_PER_THREAD = 3;

export function measureTakesInOrder(
  pool: ThreadPool,
  sampleRateHz: number,
  options: Pick<SurveyRecordingOptions, 'stringPosition' | 'pitchStandardHz'>,
): HeardTakes {
  const takes: HeardTake[] = [];
  const inOrder = createTakesInOrder({
    measure: async (segment, expectedMidi) => {
      const measureOptions = measureOptionsOf(segment, sampleRateHz, options, expectedMidi);
      const { samples } = segment;
      return { outcome: await pool.ask({ kind: 'take', samples, sampleRateHz, options: measureOptions }) };
    },
    onTake: (segment, { outcome }) => takes.push(heardTakeOf(segment, sampleRateHz, outcome)),
    mostUnderWay: TAKES_PER_THREAD * pool.threadCount,
  });
  return {
    add: inOrder.add,
    async finish() {
      await inOrder.finish();
      return takes;
    },
  };
}
