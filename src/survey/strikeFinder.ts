/** Finds the strikes in a stream, and hands on, in order of time and a little late, what sounds. */
import { newTones } from './newTones.ts';
import { createPeakPicker } from './peakPicker.ts';
import { createSampleHistory } from './sampleHistory.ts';
import { HOPS_PER_S, SHORT_FRAME_HOPS } from './soundBands.ts';
import { createSoundEventQueue, type SoundEvent } from './soundEvents.ts';
import { createStrikeJudge, type TimedToneFrame } from './strikeEvidence.ts';
import { createSuddenSoundWatch } from './suddenSounds.ts';
import { createToneFrameReader, LONG_FRAME_HOPS } from './toneFrames.ts';

export type StrikeFinder = {
  /** Events come in order of time, DECISION_LAG_S late at most; a strike, with all before it, once the guesses up to it are judged. */
  push(block: Float32Array): SoundEvent[];
  finish(): SoundEvent[];
};

/** How long it takes until all is known about a moment: until a guess can be judged, and as far back as it may lead. */
export const DECISION_LAG_S = 0.65;

export function createStrikeFinder(sampleRateHz: number): StrikeFinder {
  const hop = Math.round(sampleRateHz / HOPS_PER_S);
  const lag = Math.round(DECISION_LAG_S * sampleRateHz);
  const history = createSampleHistory(Math.round(3 * sampleRateHz));
  const sudden = createSuddenSoundWatch(sampleRateHz);
  const reader = createToneFrameReader(sampleRateHz);
  const judge = createStrikeJudge(sampleRateHz, reader);
  const news = createPeakPicker(PEAK_REACH_FRAMES, LEAST_NEWS_DB);
  const frames: TimedToneFrame[] = [];
  const guesses: number[] = [];
  const queue = createSoundEventQueue(SAME_STRIKE_S * sampleRateHz);
  let knocks: number[] = [];
  let endIndex = 0;

  const oneHop = () => {
    endIndex += hop;
    const { beganHopsAgo, knockHopsAgo } = sudden.hear(history.view(endIndex - SHORT_FRAME_HOPS * hop, endIndex));
    if (beganHopsAgo !== undefined) guess(endIndex - beganHopsAgo * hop);
    if (knockHopsAgo !== undefined) hearKnock(endIndex - knockHopsAgo * hop);
    if (endIndex % (FRAME_STEP_HOPS * hop) === 0) oneFrame();
    decideUpTo(endIndex - judge.reachAfter);
  };

  /** A strike soon after it would not be seen to rise above it, so one is guessed. */
  const hearKnock = (index: number) => {
    knocks = [...knocks.slice(-HELD_KNOCKS), index];
    for (const hops of AFTER_KNOCK_HOPS) guess(index + hops * hop);
  };

  const oneFrame = () => {
    const start = endIndex - LONG_FRAME_HOPS * hop;
    const tones = reader.read(history.view(start, endIndex));
    const before = frames
      .filter((frame) => frame.endIndex <= start && frame.endIndex > start - NEWS_HOPS * hop)
      .map((frame) => frame.tones);
    frames.push({ endIndex, tones });
    if (frames.length > HELD_FRAMES) frames.shift();
    if (news.peak(newTones(tones, before).sumDb) !== undefined)
      guess(start - PEAK_REACH_FRAMES * FRAME_STEP_HOPS * hop);
    const meanSquare = meanOfSquares(history.view(endIndex - FRAME_STEP_HOPS * hop, endIndex));
    queue.add({ kind: 'frame', endIndex, tones, meanSquare });
  };

  const guess = (index: number) => {
    guesses.push(index);
    guesses.sort((a, b) => a - b);
  };

  const decideUpTo = (index: number) => {
    for (let next = guesses[0]; next !== undefined && next <= index; next = guesses[0]) {
      guesses.shift();
      if (queue.hasStrikeNear(next)) continue;
      const strike = judge.judge(next, { history, frames, knocks });
      if (!strike) continue;
      queue.add({ kind: 'strike', ...strike });
      // A short high note's blow fades like a knock, but what a strike began is no knock.
      knocks = knocks.filter((at) => Math.abs(at - strike.index) > SAME_STRIKE_S * sampleRateHz);
    }
  };

  return {
    push(block) {
      const events: SoundEvent[] = [];
      for (let start = 0; start < block.length; ) {
        const piece = block.subarray(start, start + endIndex + hop - history.endIndex);
        history.append(piece);
        start += piece.length;
        if (history.endIndex < endIndex + hop) continue;
        oneHop();
        events.push(...queue.takeUpTo(endIndex - lag), ...queue.takeUpToStrike(endIndex - judge.reachAfter));
      }
      return events;
    },
    finish() {
      decideUpTo(Number.POSITIVE_INFINITY);
      return queue.takeUpTo(Number.POSITIVE_INFINITY);
    },
  };
}

const FRAME_STEP_HOPS = 4;
const HELD_FRAMES = 72;
const HELD_KNOCKS = 20;
const AFTER_KNOCK_HOPS = [14, 28];
const NEWS_HOPS = 76;
const PEAK_REACH_FRAMES = 3;
/** Low on purpose, as with sudden sounds. */
const LEAST_NEWS_DB = 8;
/** Nobody strikes two notes of a survey this close together; two guesses that lead here are one strike. */
const SAME_STRIKE_S = 0.15;

function meanOfSquares(samples: Float32Array): number {
  let sum = 0;
  for (const value of samples) sum += value * value;
  return sum / Math.max(1, samples.length);
}
