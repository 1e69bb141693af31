/**
 * The long view of the stream: spectra over 171 ms, in which the partials of a tone stand apart, with the level of the noise
 * between them. It sees what sounds, and only roughly when.
 */
import { powersToDecibels } from './decibels.ts';
import { createFrameSpectrum } from './frameSpectrum.ts';
import { HOPS_PER_S, SILENCE_DBFS, SILENT_POWER } from './soundBands.ts';

export const LONG_FRAME_HOPS = 32;

export type ToneFrame = {
  /** dBFS of a sine on the bin; bin k at k·binHz, from 0 to some 11 kHz. */
  readonly levelsDbfs: Float32Array;
  /** Level of the noise around each bin, from the quieter bins near it. */
  readonly floorDbfs: Float32Array;
};

export type ToneFrameReader = { readonly binHz: number; read(frame: Float32Array): ToneFrame };

export function createToneFrameReader(sampleRateHz: number): ToneFrameReader {
  const spectrum = createFrameSpectrum(LONG_FRAME_HOPS * Math.round(sampleRateHz / HOPS_PER_S), sampleRateHz);
  const binCount = Math.floor(Math.min(11000, 0.45 * sampleRateHz) / spectrum.binHz);
  const power = new Float64Array(binCount);
  const reach = Math.round(FLOOR_REACH_HZ / spectrum.binHz);
  return {
    binHz: spectrum.binHz,
    read(frame) {
      spectrum.read(frame, 0, power);
      const levelsDbfs = new Float32Array(binCount);
      for (let bin = 0; bin < binCount; bin++) levelsDbfs[bin] = (power[bin] ?? 0) + SILENT_POWER;
      powersToDecibels(levelsDbfs);
      return { levelsDbfs, floorDbfs: slidingFloor(levelsDbfs, reach) };
    },
  };
}

/** How far around a bin the noise is looked for: some ten partials of the lowest note. */
const FLOOR_REACH_HZ = 150;
/** Between the partials of the lowest note a fifth of the bins is free of them. */
const FLOOR_SHARE = 0.2;
/** Mean over 20 % quantile of the power of Gaussian noise: −10·log10(−ln 0.8). */
const QUANTILE_TO_MEAN_DB = 6.5;

/** A quantile over a sliding window, by a histogram of whole decibels that is kept up while the window moves. */
function slidingFloor(levels: Float32Array, reach: number): Float32Array {
  const bars = new Int16Array(HISTOGRAM_DB);
  const floor = new Float32Array(levels.length);
  const barOf = (bin: number) => Math.max(0, Math.min(HISTOGRAM_DB - 1, Math.floor((levels[bin] ?? 0) - SILENCE_DBFS)));
  let count = 0;
  let bar = 0; // the quantile's bar
  let below = 0; // how many lie in lower bars
  const change = (bin: number, by: number) => {
    const at = barOf(bin);
    bars[at] = (bars[at] ?? 0) + by;
    if (at < bar) below += by;
    count += by;
  };
  for (let bin = 0; bin < Math.min(reach, levels.length); bin++) change(bin, 1);
  for (let bin = 0; bin < levels.length; bin++) {
    if (bin + reach < levels.length) change(bin + reach, 1);
    if (bin - reach - 1 >= 0) change(bin - reach - 1, -1);
    const wanted = FLOOR_SHARE * count;
    while (below > wanted && bar > 0) below -= bars[--bar] ?? 0;
    while (below + (bars[bar] ?? 0) <= wanted && bar < HISTOGRAM_DB - 1) below += bars[bar++] ?? 0;
    floor[bin] = SILENCE_DBFS + bar + 0.5 + QUANTILE_TO_MEAN_DB;
  }
  return floor;
}

const HISTOGRAM_DB = 128;
