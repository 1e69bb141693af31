/** When a take in progress is worth measuring before its end is known, and how far: so that its reading shows while it sounds. */

/**
 * By then all of 30 recorded notes of a concert grand had their names, with cents 0.14 from those after 3 s in the median, 1.4 at
 * most; after 0.4 s two had none. The shortest notes, at the top in noise, have been over for 0.4 s: later, their readings are late.
 */
const FIRST_AFTER_S = 0.8;
/** Less tells the lowest notes badly. */
const LEAST_TONE_S = 0.3;
/** So many times the sound of last time: less tells nothing new. */
const WORTH_TIMES = 1.25;
/** What is noticed sooner after the take's strike is that strike. */
const OWN_STRIKE_S = 0.2;
/** A strike is noticed up to this long after it began. */
const NOTICED_LATE_S = 0.03;
/** By then the splitter has ended the take, or it was a knock. */
const SUSPECTED_FOR_S = 1;

export type EarlyMoments = {
  /** A strike was noticed that may end the take in progress. Samples count from where listening began, here and below. */
  readonly suspectStrike: (atSample: number) => void;
  /**
   * Up to which sample the take in progress is to be measured now; null where there is nothing new to measure.
   * @param struckAt the take's strike
   */
  readonly endToMeasure: (struckAt: number, heardCount: number) => number | null;
};

/** Once when enough of the tone is there, and again where a next strike is suspected. */
export function createEarlyMoments(sampleRateHz: number): EarlyMoments {
  const samplesOf = (seconds: number) => Math.round(seconds * sampleRateHz);
  let suspected: number[] = [];
  let asked = { struckAt: -1, toneCount: 0, hasFirst: false };
  return {
    suspectStrike: (atSample) => {
      suspected.push(atSample);
    },
    endToMeasure: (struckAt, heardCount) => {
      if (asked.struckAt !== struckAt) asked = { struckAt, toneCount: 0, hasFirst: false };
      suspected = suspected.filter((at) => at > heardCount - samplesOf(SUSPECTED_FOR_S));
      const next = suspected.find((at) => at > struckAt + samplesOf(OWN_STRIKE_S));
      const end = next === undefined ? heardCount : next - samplesOf(NOTICED_LATE_S);
      const toneCount = end - struckAt;
      const isFirst = !asked.hasFirst && toneCount >= samplesOf(FIRST_AFTER_S);
      if (next === undefined && !isFirst) return null;
      if (toneCount < Math.max(samplesOf(LEAST_TONE_S), WORTH_TIMES * asked.toneCount)) return null;
      asked = { struckAt, toneCount, hasFirst: asked.hasFirst || isFirst };
      return end;
    },
  };
}
