/** What speaks for a strike at a guessed place: partials that were not there before, still sounding when any knock is over. */
import { type NewTones, newTones, TONE_BOUNDS } from './newTones.ts';
import type { SampleHistory } from './sampleHistory.ts';
import { HOPS_PER_S } from './soundBands.ts';
import { createStrikeLocator } from './strikePosition.ts';
import { LONG_FRAME_HOPS, type ToneFrame, type ToneFrameReader } from './toneFrames.ts';

export type TimedToneFrame = { readonly endIndex: number; readonly tones: ToneFrame };

export type Strike = {
  readonly index: number;
  /** How much of it is new, in dB summed over the new partials. */
  readonly evidenceDb: number;
};

export type StrikeJudge = {
  /** How many samples after the guess must be there, but at the end of a recording. */
  readonly reachAfter: number;
  /** @param frames the long frames of at least the last half second before the guess */
  judge(guessIndex: number, history: SampleHistory, frames: readonly TimedToneFrame[]): Strike | undefined;
};

export function createStrikeJudge(sampleRateHz: number, reader: ToneFrameReader): StrikeJudge {
  const hop = Math.round(sampleRateHz / HOPS_PER_S);
  const locator = createStrikeLocator(sampleRateHz);
  const isMains = (bin: number) => isMainsHz(bin * reader.binHz);

  const evidenceAt = (
    index: number,
    history: SampleHistory,
    frames: readonly TimedToneFrame[],
  ): NewTones | undefined => {
    const end = Math.min(index + (LASTING_FROM_HOPS + LONG_FRAME_HOPS) * hop, history.endIndex);
    const start = end - LONG_FRAME_HOPS * hop;
    if (start < index) return undefined;
    const before = frames
      .filter(({ endIndex }) => endIndex <= index && endIndex > index - COMPARED_HOPS * hop)
      .map(({ tones }) => tones);
    const bounds = before.every(isSilent) ? { ...TONE_BOUNDS, isIgnored: isMains } : TONE_BOUNDS;
    return newTones(reader.read(history.view(start, end)), before, bounds);
  };

  return {
    reachAfter: Math.max(locator.reachAfter + (LASTING_FROM_HOPS + LONG_FRAME_HOPS) * hop),
    judge(guessIndex, history, frames) {
      const guessed = evidenceAt(guessIndex, history, frames);
      if (!guessed || guessed.sumDb < LEAST_EVIDENCE_DB) return undefined;
      const tonesHz = guessed.bins.slice(0, LOCATED_TONES).map((bin) => bin * reader.binHz);
      const from = guessIndex - locator.reachBefore;
      const to = Math.min(guessIndex + locator.reachAfter, history.endIndex);
      const index = Math.max(0, from + locator.locate(history.view(from, to), tonesHz));
      const found = evidenceAt(index, history, frames);
      return found && found.sumDb >= LEAST_EVIDENCE_DB ? { index, evidenceDb: found.sumDb } : undefined;
    },
  };
}

/** A knock is over after 43 ms. */
const LASTING_FROM_HOPS = 8;
/** Compared with what sounded in the 0.4 s before: longer than a whole beat of 2.5 Hz; a slower one rises too slowly to matter. */
const COMPARED_HOPS = 76;
/** One partial that rose by 19 dB, or several by less. Lower finds more in noise, and takes more noise for a strike. */
const LEAST_EVIDENCE_DB = 12;
const LOCATED_TONES = 12;

const isSilent = ({ levelsDbfs }: ToneFrame) => levelsDbfs.every((level) => level < -100);

/**
 * Where a recording begins there is no "before", and hum would look like a note that sounds. Mains hum lies at multiples of 50 or
 * 60 Hz; a note has partials elsewhere too.
 */
function isMainsHz(frequencyHz: number): boolean {
  if (frequencyHz > 12 * 60) return false;
  return [50, 60].some((mains) => Math.abs(frequencyHz - mains * Math.max(1, Math.round(frequencyHz / mains))) < 4.5);
}
