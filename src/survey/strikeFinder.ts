/** Finds the strikes in a stream, and hands on, in order of time and a little late, what sounds. */
import { newTones } from './newTones.ts';
import { createPeakPicker } from './peakPicker.ts';
import { createSampleHistory } from './sampleHistory.ts';
import { HOPS_PER_S, SHORT_FRAME_HOPS } from './soundBands.ts';
import { createStrikeJudge, type Strike, type TimedToneFrame } from './strikeEvidence.ts';
import { createSuddenSoundWatch } from './suddenSounds.ts';
import { createToneFrameReader, LONG_FRAME_HOPS } from './toneFrames.ts';

/** A long frame that ended, or a strike. All indexes count samples from the start of the stream. */
export type SoundEvent =
  | ({ readonly kind: 'frame'; readonly meanSquare: number } & TimedToneFrame)
  | ({ readonly kind: 'strike' } & Strike);

export type StrikeFinder = {
  /** Events come in order of time, DECISION_LAG_S late at most. */
  push(block: Float32Array): SoundEvent[];
  finish(): SoundEvent[];
};

/** How long it takes until all is known about a moment. */
export const DECISION_LAG_S = 0.9;

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
  let knocks: number[] = [];
  let strikes: Strike[] = [];
  let waiting: SoundEvent[] = [];
  let endIndex = 0;
  let lastStrikeIndex = Number.NEGATIVE_INFINITY;

  const oneHop = () => {
    endIndex += hop;
    const { beganHopsAgo, knockHopsAgo } = sudden.hear(history.view(endIndex - SHORT_FRAME_HOPS * hop, endIndex));
    if (beganHopsAgo !== undefined) guesses.push(endIndex - beganHopsAgo * hop);
    if (knockHopsAgo !== undefined) knocks = [...knocks.slice(-HELD_KNOCKS), endIndex - knockHopsAgo * hop];
    if (endIndex % (FRAME_STEP_HOPS * hop) === 0) oneFrame();
    decideUpTo(endIndex - judge.reachAfter);
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
      guesses.push(start - PEAK_REACH_FRAMES * FRAME_STEP_HOPS * hop);
    const meanSquare = meanOfSquares(history.view(endIndex - FRAME_STEP_HOPS * hop, endIndex));
    waiting.push({ kind: 'frame', endIndex, tones, meanSquare });
  };

  const decideUpTo = (index: number) => {
    for (let next = guesses[0]; next !== undefined && next <= index; next = guesses[0]) {
      guesses.shift();
      if (isNearStrike(next)) continue;
      const strike = judge.judge(next, { history, frames, knocks });
      if (strike) strikes.push(strike);
    }
  };

  const isNearStrike = (index: number) =>
    [lastStrikeIndex, ...strikes.map((strike) => strike.index)].some(
      (known) => Math.abs(known - index) < SAME_STRIKE_S * sampleRateHz,
    );

  const eventsUpTo = (index: number): SoundEvent[] => {
    const due = strikes.filter((strike) => strike.index <= index).sort((a, b) => a.index - b.index);
    strikes = strikes.filter((strike) => strike.index > index);
    const known: SoundEvent[] = due.filter(isNewStrike).map((strike) => ({ kind: 'strike', ...strike }));
    const events = [...known, ...waiting.filter((event) => timeOf(event) <= index)];
    waiting = waiting.filter((event) => timeOf(event) > index);
    return events.sort((a, b) => timeOf(a) - timeOf(b));
  };

  const isNewStrike = ({ index }: Strike) => {
    if (index < lastStrikeIndex + SAME_STRIKE_S * sampleRateHz) return false;
    lastStrikeIndex = index;
    return true;
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
        events.push(...eventsUpTo(endIndex - lag));
      }
      return events;
    },
    finish() {
      guesses.sort((a, b) => a - b);
      decideUpTo(Number.POSITIVE_INFINITY);
      return eventsUpTo(Number.POSITIVE_INFINITY);
    },
  };
}

const FRAME_STEP_HOPS = 4;
const HELD_FRAMES = 72;
const HELD_KNOCKS = 20;
const NEWS_HOPS = 76;
const PEAK_REACH_FRAMES = 3;
/** Low on purpose, as with sudden sounds. */
const LEAST_NEWS_DB = 8;
/** Nobody strikes two notes of a survey this close together; two guesses that lead here are one strike. */
const SAME_STRIKE_S = 0.15;

const timeOf = (event: SoundEvent) => (event.kind === 'strike' ? event.index : event.endIndex);

function meanOfSquares(samples: Float32Array): number {
  let sum = 0;
  for (const value of samples) sum += value * value;
  return sum / Math.max(1, samples.length);
}
