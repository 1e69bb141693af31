/**
 * The peaks of a spectrum laid out on an even grid of pitch, so that a comb of partials can be scored by looking up.
 */
import type { SpectralPeak } from '../signal/spectralPeaks.ts';

export const CENTS_PER_CELL = 2;
const LOWEST_HZ = 20;

export type SalienceMap = {
  /** For each cell: how much peak there is, 0…1 times the match. */
  readonly hit: Float64Array;
  /** For each cell: the matched peak's weight. */
  readonly weight: Float64Array;
  /** For each cell: the weight of all peaks from there upwards. */
  readonly weightAbove: Float64Array;
};

/**
 * A peak counts for what it would be heard as: less by half for every 12 dB below the strongest, and nothing where it barely
 * stands out of the noise. So a comb of many middling partials outweighs one loud foreign tone, and a crowd of small peaks
 * (a knock, a noisy room) does not outweigh the note.
 */
function weightOf(peak: SpectralPeak, strongestDbfs: number): number {
  const aboveNoise = Math.min(1, Math.max(0, (peak.snrDb - 8) / 20));
  return aboveNoise * 2 ** ((peak.levelDbfs - strongestDbfs) / 12);
}

/**
 * @param toleranceHz how far a peak may lie from a partial on account of the spectrum's resolution (one sigma)
 * @param among the peaks whose strongest is the measure of all; the same peaks unless given
 */
export function salienceMap(
  peaks: readonly SpectralPeak[],
  highestHz: number,
  toleranceHz: number,
  among: readonly SpectralPeak[] = peaks,
): SalienceMap {
  const cells = Math.ceil((1200 * Math.log2(highestHz / LOWEST_HZ)) / CENTS_PER_CELL) + 1;
  const hit = new Float64Array(cells);
  const weight = new Float64Array(cells);
  const weightAbove = new Float64Array(cells);
  const strongest = among.reduce((most, peak) => Math.max(most, peak.levelDbfs), -200);
  for (const peak of peaks) {
    const own = weightOf(peak, strongest);
    const certain = Math.min(1, Math.max(0, (peak.snrDb - 6) / 10)) * Math.min(1, own * 15);
    const toleranceCents = Math.min(40, 4 + (1731 * toleranceHz) / peak.hz);
    const centre = cellPosition(peak.hz);
    const reach = Math.ceil((2.5 * toleranceCents) / CENTS_PER_CELL);
    const nearest = Math.min(cells - 1, Math.max(0, Math.round(centre)));
    weightAbove[nearest]! += own;
    for (let cell = Math.max(0, Math.floor(centre) - reach); cell <= Math.min(cells - 1, centre + reach); cell++) {
      const match = Math.exp(-0.5 * (((cell - centre) * CENTS_PER_CELL) / toleranceCents) ** 2);
      if (match * certain > hit[cell]!) hit[cell] = match * certain;
      if (match * own > weight[cell]!) weight[cell] = match * own;
    }
  }
  for (let cell = cells - 2; cell >= 0; cell--) weightAbove[cell]! += weightAbove[cell + 1]!;
  return { hit, weight, weightAbove };
}

/** Where a frequency lies on the grid, in cells with fractions. */
export function cellPosition(hz: number): number {
  return (1200 * Math.log2(hz / LOWEST_HZ)) / CENTS_PER_CELL;
}
