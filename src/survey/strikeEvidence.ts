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

/** What was heard so far. */
export type Heard = {
  readonly history: SampleHistory;
  /** The long frames of at least the last second before the guess. */
  readonly frames: readonly TimedToneFrame[];
  /** Where knocks began. */
  readonly knocks: readonly number[];
};

export type StrikeJudge = {
  /** How many samples after the guess must be there, but at the end of a recording. */
  readonly reachAfter: number;
  judge(guessIndex: number, heard: Heard): Strike | undefined;
};

export function createStrikeJudge(sampleRateHz: number, reader: ToneFrameReader): StrikeJudge {
  const hop = Math.round(sampleRateHz / HOPS_PER_S);
  const locator = createStrikeLocator(sampleRateHz);
  const isMains = (bin: number) => isMainsHz(bin * reader.binHz);

  /** Undefined where there is not enough to speak for a strike. */
  const evidenceAt = (index: number, heard: Heard): NewTones | undefined => {
    const end = Math.min(index + (LASTING_FROM_HOPS + LONG_FRAME_HOPS) * hop, heard.history.endIndex);
    const start = end - LONG_FRAME_HOPS * hop;
    if (start < index) return undefined;
    const before = soundBefore(index, heard, hop);
    const bounds = before.every(isSilent) ? { ...TONE_BOUNDS, isIgnored: isMains } : TONE_BOUNDS;
    const evidence = newTones(reader.read(heard.history.view(start, end)), before, bounds);
    return evidence.sumDb >= LEAST_EVIDENCE_DB ? evidence : undefined;
  };

  const strongestHz = (tones: NewTones) => tones.bins.slice(0, LOCATED_TONES).map((bin) => bin * reader.binHz);

  /** @param fromIndex nothing before it is looked at */
  const locate = (guessIndex: number, fromIndex: number | undefined, tones: NewTones, { history }: Heard) => {
    const from = fromIndex ?? guessIndex - locator.reachBefore;
    const samples = history.view(from, Math.min(guessIndex + locator.reachAfter, history.endIndex));
    const position = locator.locate(
      samples,
      strongestHz(tones),
      fromIndex === undefined ? QUIET_HOPS : LEAST_QUIET_HOPS,
    );
    return { ...position, index: Math.max(0, from + position.index) };
  };

  /** The partials may have come after a knock that was taken for their beginning: then they begin once more, as suddenly, after it. */
  const lookAfter = (
    knock: { readonly index: number; readonly overHops: readonly number[] },
    guessIndex: number,
    tones: NewTones,
    heard: Heard,
  ): Strike | undefined => {
    const stretch = heard.history.view(
      knock.index,
      Math.min(knock.index + KNOCK_LENGTH_HOPS * hop, heard.history.endIndex),
    );
    if (locator.prominenceDb(stretch, 0, strongestHz(tones)) > TONELESS_DB) return undefined;
    for (const hops of knock.overHops) {
      const { index, riseDb, riseTimeS } = locate(guessIndex, knock.index + hops * hop, tones, heard);
      if (riseDb < LEAST_LATER_RISE_DB || riseTimeS > LONGEST_RISE_S) continue;
      const evidence = evidenceAt(index, heard);
      if (!evidence || evidence.sumDb < LATER_SHARE * tones.sumDb) continue;
      return { index, evidenceDb: evidence.sumDb };
    }
    return undefined;
  };

  return {
    reachAfter: locator.reachAfter + (LASTING_FROM_HOPS + LONG_FRAME_HOPS) * hop,
    judge(guessIndex, heard) {
      const guessed = evidenceAt(guessIndex, heard);
      if (!guessed) return undefined;
      const { index } = locate(guessIndex, undefined, guessed, heard);
      const found = evidenceAt(index, heard);
      const knock = heard.knocks.find((at) => Math.abs(at - index) < KNOCK_REACH_HOPS * hop);
      if (!found) {
        const overHops = [KNOCK_OVER_HOPS, LOUD_KNOCK_OVER_HOPS];
        return lookAfter({ index: knock ?? index, overHops }, guessIndex, guessed, heard);
      }
      const overHops = [KNOCK_OVER_HOPS];
      const later = knock === undefined ? undefined : lookAfter({ index: knock, overHops }, guessIndex, found, heard);
      return later ?? { index, evidenceDb: found.sumDb };
    },
  };
}

/** The long frames just before; those with a knock in them are passed over, for it would hide a soft strike that follows. */
function soundBefore(index: number, { frames, knocks }: Heard, hop: number): ToneFrame[] {
  const hasKnock = (endIndex: number) =>
    knocks.some((at) => at < endIndex - hop && at + KNOCK_LENGTH_HOPS * hop > endIndex - LONG_FRAME_HOPS * hop);
  const within = (hops: number) => frames.filter(({ endIndex }) => endIndex <= index && endIndex > index - hops * hop);
  const compared = within(COMPARED_HOPS);
  const hidesNothing = compared.every(({ endIndex }) => !hasKnock(endIndex));
  const free = within(COMPARED_HOPS + KNOCK_LENGTH_HOPS + LONG_FRAME_HOPS).filter(
    ({ endIndex }) => !hasKnock(endIndex),
  );
  return (hidesNothing || free.length === 0 ? compared : free).map(({ tones }) => tones);
}

/** A knock is over after 43 ms. */
const LASTING_FROM_HOPS = 8;
/** Compared with what sounded in the 0.4 s before: longer than a whole beat of 2.5 Hz; a slower one rises too slowly to matter. */
const COMPARED_HOPS = 76;
/** One partial that rose by 19 dB, or several by less. Lower finds more in noise, and takes more noise for a strike. */
const LEAST_EVIDENCE_DB = 12;
const LOCATED_TONES = 12;
/** How much of what the locator sees is surely from before the strike. */
const QUIET_HOPS = 8;
const LEAST_QUIET_HOPS = 2;
const KNOCK_LENGTH_HOPS = 12;
/** A strike found this near a knock may be the knock. */
const KNOCK_REACH_HOPS = 6;
/** After 32 ms it no longer hides the partials' own beginning, a loud one after 75 ms. */
const KNOCK_OVER_HOPS = 6;
const LOUD_KNOCK_OVER_HOPS = 14;
const TONELESS_DB = 10;
const LEAST_LATER_RISE_DB = 9;
/** Beats of 8 Hz that begin in a trough take some 14 ms. */
const LONGEST_RISE_S = 0.0115;
const LATER_SHARE = 0.6;

const isSilent = ({ levelsDbfs }: ToneFrame) => levelsDbfs.every((level) => level < -100);

/**
 * Where a recording begins there is no "before", and hum would look like a note that sounds. Mains hum lies at multiples of 50 or
 * 60 Hz; a note has partials elsewhere too.
 */
function isMainsHz(frequencyHz: number): boolean {
  if (frequencyHz > 12 * 60) return false;
  return [50, 60].some((mains) => Math.abs(frequencyHz - mains * Math.max(1, Math.round(frequencyHz / mains))) < 4.5);
}
