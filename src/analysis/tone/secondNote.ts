/** Whether another struck note sounds in the same take: a second comb among the peaks that the first note leaves over. */
import { midiToHz } from '../../piano/note.ts';
import type { SpectralPeak } from '../signal/spectralPeaks.ts';
import { combScore, teethOf } from './combScore.ts';
import type { PartialFit } from './partialFit.ts';
import { salienceMap } from './salienceMap.ts';
import { partialHz, typicalInharmonicity } from './typicalInharmonicity.ts';

type Comb = { readonly f0Hz: number; readonly inharmonicityB: number };

export type LeftOver = {
  /** Share of all peaks' weight that the first note leaves over, 0…1. */
  readonly share: number;
  /** Share of what is left that the best second note takes up, times how few of its own partials are missing, 0…1. */
  readonly secondScore: number;
  readonly secondMidi: number | null;
};

/** A second note has to explain this much of what is left over, which has to be this share of all. */
const LEAST_SECOND_SCORE = 0.48;
const LEAST_LEFT_SHARE = 0.1;
const HIGHEST_HZ = 14000;

export function hasSecondNote(
  peaks: readonly SpectralPeak[],
  midi: number,
  comb: Comb,
  resolutionHz: number,
  partials: readonly PartialFit[],
): boolean {
  const left = leftOver(peaks, midi, comb, resolutionHz);
  const isForeign = left.share > LEAST_LEFT_SHARE && left.secondScore > LEAST_SECOND_SCORE;
  return isForeign || beatsOnEveryFew(partials);
}

/** What the first note leaves over and how well one more note would explain it; its partials may coincide with the first's. */
export function leftOver(peaks: readonly SpectralPeak[], midi: number, comb: Comb, resolutionHz: number): LeftOver {
  const all = salienceMap(peaks, HIGHEST_HZ, resolutionHz);
  const remaining = peaks.filter((peak) => peak.hz < HIGHEST_HZ && !belongs(peak, comb, resolutionHz));
  const rest = salienceMap(remaining, HIGHEST_HZ, resolutionHz, peaks);
  const share = (rest.weightAbove[0] ?? 0) / Math.max(all.weightAbove[0] ?? 0, 1e-12);
  let secondScore = 0;
  let secondMidi: number | null = null;
  if (remaining.length < 2) return { share, secondScore, secondMidi };
  for (let other = 21; other <= 108; other++) {
    if (other === midi) continue;
    const f0Hz = midiToHz(other, 440);
    for (const factor of [0.5, 1, 1.6]) {
      const teeth = teethOf(f0Hz, typicalInharmonicity(other) * factor);
      for (let shift = -60; shift <= 60; shift += 4) {
        const score = combScore(all, teeth, f0Hz, shift).completeness * combScore(rest, teeth, f0Hz, shift).takenUp;
        if (score <= secondScore) continue;
        secondScore = score;
        secondMidi = other;
      }
    }
  }
  return { share, secondScore, secondMidi };
}

function belongs(peak: SpectralPeak, comb: Comb, resolutionHz: number): boolean {
  const roughly = Math.max(1, Math.round(peak.hz / comb.f0Hz));
  for (let n = Math.max(1, Math.floor(0.7 * roughly)); n <= roughly + 1; n++) {
    const tolerance = 2 * resolutionHz + 0.003 * peak.hz;
    if (Math.abs(partialHz(comb.f0Hz, comb.inharmonicityB, n) - peak.hz) < tolerance) return true;
  }
  return false;
}

/** A second component has to be this strong against the first to be another note's. */
const LEAST_RATIO = 0.25;

/**
 * A note an octave or a twelfth higher hides behind every second or third partial of the lower one, and shows by beats on just
 * those: at least three of them, and on none of the others.
 */
function beatsOnEveryFew(partials: readonly PartialFit[]): boolean {
  const isDouble = (partial: PartialFit) => {
    const [main, second] = partial.components;
    return second !== undefined && second.amplitude > LEAST_RATIO * main!.amplitude;
  };
  return [2, 3, 4].some((step) => {
    const low = partials.filter((partial) => partial.partialNumber <= 5 * step);
    const on = low.filter((partial) => partial.partialNumber % step === 0);
    const off = low.filter((partial) => partial.partialNumber % step !== 0);
    const doubled = on.filter(isDouble).length;
    return doubled >= 3 && doubled >= on.length - 1 && off.length >= 3 && !off.some(isDouble);
  });
}
