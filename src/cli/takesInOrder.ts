/** The takes of one recording, measured on several threads, with the same result as one after another. */
import type { TakeOutcome } from '../piano/reading.ts';
import type { HeardTake } from '../survey/assembleSurvey.ts';
import { heardTakeOf, measureOptionsOf, type SurveyRecordingOptions } from '../survey/surveyRecording.ts';
import type { Segment } from '../survey/takeSplitter.ts';
import { nextOfWalk } from '../survey/walk.ts';
import type { ThreadPool } from './threadPool.ts';

export type TakesInOrder = {
  /** Resolves once there is room for more, so that a long recording does not pile up in memory. */
  add(segment: Segment): Promise<void>;
  finish(): Promise<HeardTake[]>;
};

/** Takes that may wait for each thread. */
const TAKES_PER_THREAD = 3;

/**
 * Each take is first measured without expecting anything, on any thread. Then, in the order played, a walk through the compass
 * may expect another note than was found: only such a take is measured again with that expectation. What was found as expected
 * stays as it is, because the expectation only adds to the score of the note that had won already.
 */
export function measureTakesInOrder(
  pool: ThreadPool,
  sampleRateHz: number,
  options: Pick<SurveyRecordingOptions, 'stringPosition' | 'pitchStandardHz'>,
): TakesInOrder {
  const takes: HeardTake[] = [];
  const walked: number[] = [];
  const underWay: Promise<void>[] = [];
  let last: Promise<void> = Promise.resolve();
  const measure = (segment: Segment, expectedMidi?: number) => {
    const measureOptions = measureOptionsOf(segment, sampleRateHz, options, expectedMidi);
    return pool.ask({ kind: 'take', samples: segment.samples, sampleRateHz, options: measureOptions });
  };
  const settle = async (segment: Segment, unexpecting: Promise<TakeOutcome>, before: Promise<void>) => {
    const [outcomeAlone] = await Promise.all([unexpecting, before]);
    const expectedMidi = nextOfWalk(walked);
    const isAsExpected = outcomeAlone.found && outcomeAlone.reading.midi === expectedMidi;
    const outcome = expectedMidi === undefined || isAsExpected ? outcomeAlone : await measure(segment, expectedMidi);
    if (outcome.found && outcome.reading.quality.isUsable) walked.push(outcome.reading.midi);
    takes.push(heardTakeOf(segment, sampleRateHz, outcome));
  };
  return {
    async add(segment) {
      last = settle(segment, measure(segment), last);
      // A failure is met by `finish`; until then it must not count as one that nobody looks after.
      last.catch(() => undefined);
      underWay.push(last);
      if (underWay.length > TAKES_PER_THREAD * pool.threadCount) await underWay.shift();
    },
    async finish() {
      await last;
      return takes;
    },
  };
}
