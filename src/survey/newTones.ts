/** Which partials sound now that did not sound, or sounded much weaker, a little while before. */
import type { ToneFrame } from './toneFrames.ts';

export type NewTones = {
  /** Bins of the new partials, strongest rise first. */
  readonly bins: readonly number[];
  /** Their rises above what was there, in dB, less what beats can do, each capped, summed. */
  readonly sumDb: number;
};

export type Bounds = {
  /** A partial stands at least this far above the noise around it. */
  readonly aboveNoiseDb: number;
  /** A partial this far below the strongest is of no account. */
  readonly rangeDb: number;
  readonly isIgnored?: (bin: number) => boolean;
};

/** Noise alone passes 12 dB above its mean once in some 10⁷ bins. */
export const TONE_BOUNDS: Bounds = { aboveNoiseDb: 12, rangeDb: 50 };

/**
 * @param before the frames to compare with; a partial is measured against the loudest of them, its two neighbouring bins included
 */
export function newTones(now: ToneFrame, before: readonly ToneFrame[], bounds: Bounds = TONE_BOUNDS): NewTones {
  const rises = partialBins(now, bounds)
    .filter((bin) => !bounds.isIgnored?.(bin))
    .map((bin) => ({ bin, riseDb: riseAbove(now, before, bin) - BEAT_RISE_DB }))
    .filter(({ riseDb }) => riseDb > 0)
    .sort((a, b) => b.riseDb - a.riseDb);
  const sumDb = rises.reduce((sum, { riseDb }) => sum + Math.min(LARGEST_RISE_DB, riseDb), 0);
  return { bins: rises.map(({ bin }) => bin), sumDb };
}

/** Bins where a partial stands: local maxima well above the noise around them and not far below the strongest. */
export function partialBins(frame: ToneFrame, bounds: Bounds = TONE_BOUNDS): number[] {
  const { levelsDbfs: levels, floorDbfs: floor } = frame;
  let strongest = Number.NEGATIVE_INFINITY;
  for (const level of levels) if (level > strongest) strongest = level;
  const bins: number[] = [];
  for (let bin = FIRST_BIN; bin < levels.length - 2; bin++) {
    const level = levels[bin] ?? 0;
    if (level < strongest - bounds.rangeDb || level < (floor[bin] ?? 0) + bounds.aboveNoiseDb) continue;
    if (level < (levels[bin - 1] ?? 0) || level <= (levels[bin + 1] ?? 0)) continue;
    if (level < (levels[bin - 2] ?? 0) || level < (levels[bin + 2] ?? 0)) continue;
    bins.push(bin);
  }
  return bins;
}

function riseAbove(now: ToneFrame, before: readonly ToneFrame[], bin: number): number {
  let loudest = (now.floorDbfs[bin] ?? 0) - NOISE_MARGIN_DB;
  for (const frame of before)
    for (let near = bin - 1; near <= bin + 1; near++) loudest = Math.max(loudest, frame.levelsDbfs[near] ?? 0);
  return (now.levelsDbfs[bin] ?? 0) - loudest;
}

/** Below some 20 Hz no piano sounds. */
const FIRST_BIN = 3;
/** Slow beats between the compared frames make a partial rise by up to this much. */
const BEAT_RISE_DB = 7;
const LARGEST_RISE_DB = 15;
/** The floor is an average over many bins; one bin's own noise may be lower. */
const NOISE_MARGIN_DB = 0;
