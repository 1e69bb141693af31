/** Whether another struck note sounds in the same take: a second comb among the peaks that the first note leaves over. */
import type { SpectralPeak } from '../signal/spectralPeaks.ts';
import { combScore, teethOf } from './combScore.ts';
import type { InharmonicityFit } from './fitInharmonicity.ts';
import { salienceMap } from './salienceMap.ts';
import { partialHz, typicalInharmonicity } from './typicalInharmonicity.ts';

/** A second note has to explain this much of what is left over, which has to be this share of all. */
const LEAST_COMB_SCORE = 0.45;
const LEAST_LEFT_SHARE = 0.28;
const LEAST_PARTIALS = 2;

export function hasSecondNote(
  peaks: readonly SpectralPeak[],
  midi: number,
  fit: { readonly f0Hz: number; readonly inharmonicityB: number } | InharmonicityFit,
  resolutionHz: number,
): boolean {
  const highestHz = 14000;
  const all = salienceMap(peaks, highestHz, resolutionHz);
  const left = peaks.filter((peak) => peak.hz < highestHz && !belongs(peak, fit, resolutionHz));
  const strong = left.filter((peak) => peak.snrDb > 15);
  if (strong.length < LEAST_PARTIALS) return false;
  const rest = salienceMap(left, highestHz, resolutionHz, peaks);
  const leftShare = (rest.weightAbove[0] ?? 0) / Math.max(all.weightAbove[0] ?? 0, 1e-12);
  if (leftShare < LEAST_LEFT_SHARE) return false;
  for (let other = 21; other <= 108; other++) {
    if (other === midi) continue;
    const f0Hz = 440 * 2 ** ((other - 69) / 12);
    const inharmonicityB = typicalInharmonicity(other);
    const teeth = teethOf(f0Hz, inharmonicityB);
    for (let shift = -60; shift <= 60; shift += 4) {
      const comb = combScore(rest, teeth, f0Hz, shift);
      if (comb.score > LEAST_COMB_SCORE && comb.highestPartial >= LEAST_PARTIALS) return true;
    }
  }
  return false;
}

function belongs(peak: SpectralPeak, fit: { f0Hz: number; inharmonicityB: number }, resolutionHz: number): boolean {
  const roughly = Math.max(1, Math.round(peak.hz / fit.f0Hz));
  for (let n = Math.max(1, Math.floor(0.7 * roughly)); n <= roughly + 1; n++) {
    const tolerance = 3 * resolutionHz + 0.006 * peak.hz;
    if (Math.abs(partialHz(fit.f0Hz, fit.inharmonicityB, n) - peak.hz) < tolerance) return true;
  }
  return false;
}
