/** Waits for a reference tone, second by second, and measures it when it has sounded long enough: nobody has to press anything. */
import {
  isToneThere,
  LEAST_REFERENCE_S,
  measureReference,
  type ReferenceOutcome,
} from '../analysis/tone/measureReference.ts';

export type ReferenceEar = {
  /** What there is to tell after these samples. */
  readonly hear: (samples: Float32Array) => EarNews[];
  readonly startAfresh: () => void;
};
export type EarNews =
  | { readonly kind: 'heard'; readonly heardS: number }
  | { readonly kind: 'outcome'; readonly outcome: ReferenceOutcome };

/** A tone that goes on is measured after so long; more brings little, a fork in a hand is no quieter later. */
const ENOUGH_S = 16;

export function createReferenceEar(sampleRateHz: number, expectedHz: number): ReferenceEar {
  const second = new Float32Array(Math.round(sampleRateHz));
  const heard = new Float32Array(ENOUGH_S * second.length);
  let filledCount = 0;
  let heardS = 0;
  const measured = (): EarNews => {
    const samples = heard.slice(0, heardS * second.length);
    heardS = 0;
    return { kind: 'outcome', outcome: measureReference(samples, sampleRateHz, expectedHz) };
  };
  const endSecond = (): EarNews[] => {
    if (!isToneThere(second, sampleRateHz, expectedHz)) {
      const isEnough = heardS >= LEAST_REFERENCE_S;
      const news: EarNews = isEnough ? measured() : { kind: 'heard', heardS: 0 };
      heardS = 0;
      return [news];
    }
    heard.set(second, heardS * second.length);
    heardS += 1;
    return heardS === ENOUGH_S ? [{ kind: 'heard', heardS }, measured()] : [{ kind: 'heard', heardS }];
  };
  return {
    hear: (samples) => {
      const news: EarNews[] = [];
      for (let from = 0; from < samples.length; ) {
        const count = Math.min(second.length - filledCount, samples.length - from);
        second.set(samples.subarray(from, from + count), filledCount);
        filledCount += count;
        from += count;
        if (filledCount < second.length) continue;
        filledCount = 0;
        news.push(...endSecond());
      }
      return news;
    },
    startAfresh: () => {
      filledCount = 0;
      heardS = 0;
    },
  };
}
