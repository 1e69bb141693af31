/** The takes of one recording, measured several at a time, with the same result as one after another. */
import type { TakeOutcome } from '../piano/reading.ts';
import type { Segment } from './takeSplitter.ts';
import { nextOfWalk } from './walk.ts';

export type TakesInOrder = {
  /** Resolves once there is room for more, so that a long recording does not pile up in memory. */
  add(segment: Segment): Promise<void>;
  /** Rejects where measuring a take failed. */
  finish(): Promise<void>;
};

export type MeasuringInOrder<Answer extends { readonly outcome: TakeOutcome }> = {
  readonly measure: (segment: Segment, expectedMidi: number | undefined) => Promise<Answer>;
  /** Told of each take in the order played. */
  readonly onTake: (segment: Segment, answer: Answer) => void;
  /** Takes that may be under way at once. */
  readonly mostUnderWay: number;
};

/**
 * Each take is first measured without expecting anything, as soon as there is room. Then, in the order played, a walk through the
 * compass may expect another note than was found: only such a take is measured again with that expectation. What was found as
 * expected stays as it is, because the expectation only adds to the score of the note that had won already.
 */
export function createTakesInOrder<Answer extends { readonly outcome: TakeOutcome }>(
  measuring: MeasuringInOrder<Answer>,
): TakesInOrder {
  const { measure, onTake, mostUnderWay } = measuring;
  const walked: number[] = [];
  const underWay: Promise<void>[] = [];
  let last: Promise<void> = Promise.resolve();
  const settle = async (segment: Segment, unexpecting: Promise<Answer>, before: Promise<void>) => {
    const [alone] = await Promise.all([unexpecting, before]);
    const expectedMidi = nextOfWalk(walked);
    const isAsExpected = alone.outcome.found && alone.outcome.reading.midi === expectedMidi;
    const answer = expectedMidi === undefined || isAsExpected ? alone : await measure(segment, expectedMidi);
    const { outcome } = answer;
    if (outcome.found && outcome.reading.quality.isUsable) walked.push(outcome.reading.midi);
    onTake(segment, answer);
  };
  return {
    async add(segment) {
      last = settle(segment, measure(segment, undefined), last);
      // A failure is met by `finish`; until then it must not count as one that nobody looks after.
      last.catch(() => undefined);
      underWay.push(last);
      if (underWay.length > mostUnderWay) await underWay.shift();
    },
    finish: () => last,
  };
}
