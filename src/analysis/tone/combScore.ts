/**
 * How well an inharmonic comb explains a spectrum: what share of the peaks it takes up, and how few of its own teeth are missing.
 *
 * A comb an octave too high leaves half of the peaks over; one an octave too low finds every other tooth missing. The product
 * of both is largest at the right note. Teeth are counted up to where the run of found ones is best. Peaks far below the
 * comb's first tooth do not count against it: in the treble they are the blow on the key, in the bass there are none.
 */
import { CENTS_PER_CELL, cellPosition, type SalienceMap } from './salienceMap.ts';

export type CombScore = {
  /** 0…1. */
  readonly score: number;
  readonly explained: number;
  readonly completeness: number;
  readonly highestPartial: number;
  /** Share of all the peaks that any of the teeth, however sparse, takes up. */
  readonly takenUp: number;
};

/** Below this the case and the room swallow a string's first partials; their absence says little. */
const WEAK_BELOW_HZ = 90;
const MOST_TEETH = 48;
/** A tooth has to be found at least this well to lengthen the run. */
const LEAST_HIT = 0.45;
/** Peaks below this share of f0 are left aside; just less than a half, so that an octave error is still seen. */
const LOWEST_SHARE = 0.45;

/** Grid positions of a comb's teeth at `f0Hz`. */
export function teethOf(f0Hz: number, inharmonicityB: number): Float64Array {
  return Float64Array.from({ length: MOST_TEETH }, (_, i) =>
    cellPosition((i + 1) * f0Hz * Math.sqrt(1 + inharmonicityB * (i + 1) ** 2)),
  );
}

/** Scores the comb whose teeth (from `teethOf`) are all moved by `shiftCents`. */
export function combScore(map: SalienceMap, teeth: Float64Array, f0Hz: number, shiftCents: number): CombScore {
  const shift = shiftCents / CENTS_PER_CELL;
  let explained = 0;
  let found = 0;
  let counted = 0;
  let balance = 0;
  let best = { balance: 0, explained: 0, found: 0, counted: 1, highestPartial: 0 };
  for (let i = 0; i < teeth.length; i++) {
    const cell = Math.round(teeth[i]! + shift);
    if (cell < 0 || cell >= map.hit.length) break;
    const hit = map.hit[cell]!;
    const weight = (i + 1) * f0Hz < WEAK_BELOW_HZ ? Math.max(hit, 0.25) : 1;
    explained += map.weight[cell]!;
    found += weight * hit;
    counted += weight;
    balance += weight * (hit - LEAST_HIT);
    if (balance >= best.balance) best = { balance, explained, found, counted, highestPartial: i + 1 };
  }
  const floor = Math.max(0, Math.round(cellPosition(LOWEST_SHARE * f0Hz)));
  const total = Math.max(map.weightAbove[floor] ?? 0, 1e-12);
  const explainedShare = Math.min(1, best.explained / total);
  const completeness = best.found / best.counted;
  return {
    score: explainedShare * completeness,
    explained: explainedShare,
    completeness,
    highestPartial: best.highestPartial,
    takenUp: Math.min(1, explained / total),
  };
}
