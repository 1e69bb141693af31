/** Peaks of a short-time spectrum with their height over the local noise. */
import { powerOfTwoFrom, powerSpectrum } from './fourier.ts';
import { blackmanHarris } from './window.ts';

export type SpectralPeak = {
  readonly hz: number;
  /** Level of a sine that would give this peak, relative to full scale. */
  readonly levelDbfs: number;
  /** Height over the noise floor around it. */
  readonly snrDb: number;
};

export type Spectrum = {
  /** Power in dB, bin k at k·binHz; a full-scale sine peaks at 0 dB. */
  readonly levelDb: Float64Array;
  readonly binHz: number;
};

/** Blackman–Harris spectrum of samples[startIndex, endIndex), padded with zeros to at least twice the length. */
export function spectrumOf(
  samples: Float32Array,
  startIndex: number,
  endIndex: number,
  sampleRateHz: number,
): Spectrum {
  const length = endIndex - startIndex;
  const window = blackmanHarris(length);
  const frame = new Float64Array(length);
  let gain = 0;
  for (let i = 0; i < length; i++) {
    frame[i] = samples[startIndex + i]! * window[i]!;
    gain += window[i]!;
  }
  const size = powerOfTwoFrom(2 * length);
  const power = powerSpectrum(frame, size);
  const levelDb = power.map((value) => 10 * Math.log10(Math.max(value, 1e-30) / (gain / 2) ** 2));
  return { levelDb, binHz: sampleRateHz / size };
}

/**
 * Noise floor in dB for each bin: a low quantile of the levels in a neighbourhood of ±`reachHz`, raised to the mean of noise. A
 * low quantile, because in the bass most bins near a partial belong to the partial's skirts.
 */
export function noiseFloorDb(spectrum: Spectrum, reachHz: number): Float64Array {
  const { levelDb, binHz } = spectrum;
  const reach = Math.max(8, Math.round(reachHz / binHz));
  const hop = Math.max(1, reach >> 1);
  const knots: number[] = [];
  for (let centre = 0; centre < levelDb.length + hop; centre += hop) {
    const from = Math.max(0, Math.min(levelDb.length - 8, centre - reach));
    const around = everyOther(levelDb, from, Math.min(levelDb.length, centre + reach + 1)).sort();
    knots.push((around[Math.floor(around.length * 0.25)] ?? -200) + QUARTILE_TO_MEAN_DB);
  }
  return levelDb.map((_, bin) => {
    const position = bin / hop;
    const left = Math.floor(position);
    const share = position - left;
    return knots[left]! * (1 - share) + (knots[left + 1] ?? knots[left]!) * share;
  });
}

/** Padded twofold, a spectrum says nothing new in every other bin. */
function everyOther(values: Float64Array, from: number, to: number): Float64Array {
  const thinned = new Float64Array(Math.max(0, Math.ceil((to - from) / 2)));
  for (let i = 0; i < thinned.length; i++) thinned[i] = values[from + 2 * i]!;
  return thinned;
}

/** The power of Gaussian noise is exponentially distributed: its quartile lies 10·log10(ln(4/3)) = −5.4 dB under its mean. */
const QUARTILE_TO_MEAN_DB = 5.4;

/** All local maxima at least `leastSnrDb` above the floor, strongest first, at most `most`. */
export function spectralPeaks(
  spectrum: Spectrum,
  floorDb: Float64Array,
  limits: { readonly lowestHz: number; readonly highestHz: number; readonly leastSnrDb: number; readonly most: number },
): SpectralPeak[] {
  const { levelDb, binHz } = spectrum;
  const peaks: SpectralPeak[] = [];
  const last = Math.min(levelDb.length - 2, Math.floor(limits.highestHz / binHz));
  for (let k = Math.max(2, Math.ceil(limits.lowestHz / binHz)); k <= last; k++) {
    const here = levelDb[k]!;
    if (here <= levelDb[k - 1]! || here < levelDb[k + 1]! || here - floorDb[k]! < limits.leastSnrDb) continue;
    const curve = levelDb[k - 1]! - 2 * here + levelDb[k + 1]!;
    const shift = curve === 0 ? 0 : (0.5 * (levelDb[k - 1]! - levelDb[k + 1]!)) / curve;
    const levelDbfs = here - 0.25 * (levelDb[k - 1]! - levelDb[k + 1]!) * shift;
    peaks.push({ hz: (k + shift) * binHz, levelDbfs, snrDb: levelDbfs - floorDb[k]! });
  }
  return peaks.sort((a, b) => b.snrDb - a.snrDb).slice(0, limits.most);
}
