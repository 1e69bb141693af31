/** What one strike of a string and the next differ by in their beats. */
import type { NoteReading } from '../../piano/reading.ts';
import { deepestBeat, depthToRatio } from '../falseBeats/beatStrength.ts';
import { partialOf } from './sideBeat.ts';

/**
 * What one strike and the next differ by in a beat's ratio: a share of the ratio and a floor. Chosen, in want of a published figure; it
 * counts as much as three repeats, so that repeated takes soon replace it.
 */
const USUAL_SCATTER_SHARE = 0.15;
const USUAL_SCATTER_FLOOR = 0.035;
const USUAL_WORTH = 3;
/** And in its rate, besides the fit's own uncertainty. Chosen. */
const RATE_SCATTER_SHARE = 0.03;
const RATE_SCATTER_FLOOR_HZ = 0.03;
/** Depth and rate of a beat of which hardly one fits into the tone are a guess of the fit: in ratio, and as a share of the rate, at one cycle. Chosen. */
const FEW_CYCLES = 0.15;

export function rateScatterHz(rateHz: number, cycleCount: number): number {
  return Math.hypot(RATE_SCATTER_SHARE * rateHz, RATE_SCATTER_FLOOR_HZ, FEW_CYCLES * (rateHz / cycleCount ** 2));
}

/** Of the amplitude ratio of a beat, one take. */
export function usualScatter(ratio: number): number {
  return Math.hypot(USUAL_SCATTER_SHARE * ratio, USUAL_SCATTER_FLOOR);
}

export function fewCyclesScatter(cycleCount: number | null): number {
  return cycleCount === null ? 0 : FEW_CYCLES / cycleCount ** 2;
}

/**
 * What repeated takes of one side differ by in their beats' ratios, over the usual: 1 where nothing was repeated, less where they
 * agree better, more where they disagree.
 */
export function repeatScatter(sides: readonly (readonly NoteReading[])[]): number {
  let squares = USUAL_WORTH;
  let freedom = USUAL_WORTH;
  for (const takes of sides) {
    for (const partialNumber of new Set(
      takes.flatMap(({ partials }) => partials.map((partial) => partial.partialNumber)),
    )) {
      const ratios = takes.flatMap((take) => beatRatio(take, partialNumber));
      if (ratios.length < 2) continue;
      const mean = ratios.reduce((sum, ratio) => sum + ratio, 0) / ratios.length;
      squares += ratios.reduce((sum, ratio) => sum + (ratio - mean) ** 2, 0) / usualScatter(mean) ** 2;
      freedom += ratios.length - 1;
    }
  }
  return Math.max(LEAST_FACTOR, Math.sqrt(squares / freedom));
}

/** However well takes agree: a few of them may agree by chance. */
const LEAST_FACTOR = 0.5;

function beatRatio(take: NoteReading, partialNumber: number): number[] {
  const partial = partialOf(take, partialNumber);
  const beat = partial && deepestBeat(partial);
  return beat ? [depthToRatio(beat.depthDb)] : [];
}
