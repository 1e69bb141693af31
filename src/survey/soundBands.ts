/**
 * The short view of the stream: levels of some thirty bands over frames of 21 ms, one frame every 5.3 ms. It sees when something
 * begins, and nothing of what it is.
 */
import { powersToDecibels } from './decibels.ts';
import { createFrameSpectrum } from './frameSpectrum.ts';

/** Hops a second; every length below is a number of hops, so that all sample rates see the same times. */
export const HOPS_PER_S = 187.5;
export const SHORT_FRAME_HOPS = 4;

/** Edges in Hz: even steps where a frame cannot tell finer, then five bands an octave. */
export function bandEdgesHz(sampleRateHz: number): number[] {
  const edges = [47, 94, 141, 188, 235, 282, 376, 470, 564];
  const highest = Math.min(11000, 0.45 * sampleRateHz);
  for (let edge = 564 * 2 ** 0.2; edge < highest; edge *= 2 ** 0.2) edges.push(edge);
  return edges;
}

/** Sums the power of a spectrum's bins between the edges; a band too narrow for a bin takes the bin nearest to it. */
export function bandPowers(power: Float64Array, binHz: number, edgesHz: readonly number[], out: Float64Array): void {
  for (let band = 0; band < out.length; band++) {
    const from = Math.round((edgesHz[band] ?? 0) / binHz);
    const to = Math.max(from + 1, Math.round((edgesHz[band + 1] ?? 0) / binHz));
    let sum = 0;
    for (let bin = from; bin < to; bin++) sum += power[bin] ?? 0;
    out[band] = sum;
  }
}

export type BandWatch = {
  /** Takes in the frame of this hop. */
  watch(frame: Float32Array): void;
  /** How far the newest frame stands above what the bands held just before it, in dB summed over the bands. */
  suddenRiseDb(): number;
  /** How far, on average, the bands that rose with the frame `hopsAgo` have fallen since, in dB. */
  fallSinceDb(hopsAgo: number): number;
};

/**
 * The rise is taken above the loudest of the frames that ended 32 to 180 ms before: two strings beating against each other never
 * rise by more than 3 dB above that, whatever their rate, since the envelope |sin| is as steep before its trough as after it.
 */
export function createBandWatch(sampleRateHz: number): BandWatch {
  const edges = bandEdgesHz(sampleRateHz);
  const count = edges.length - 1;
  const spectrum = createFrameSpectrum(SHORT_FRAME_HOPS * Math.round(sampleRateHz / HOPS_PER_S), sampleRateHz);
  const power = new Float64Array(Math.ceil((edges[count] ?? 0) / spectrum.binHz) + 2);
  const sums = new Float64Array(count);
  const history = Array.from({ length: HELD_HOPS }, () => new Float32Array(count).fill(SILENCE_DBFS));
  const loudest = new Float32Array(count);
  let newest = 0;
  const levels = (hopsAgo: number) => history[(newest - hopsAgo + 2 * HELD_HOPS) % HELD_HOPS] ?? loudest;
  const findLoudestBefore = (hopsAgo: number) => {
    loudest.fill(SILENCE_DBFS);
    for (let hop = hopsAgo + REFERENCE_FROM_HOPS; hop <= hopsAgo + REFERENCE_TO_HOPS; hop++) {
      const frame = levels(hop);
      for (let band = 0; band < count; band++)
        if ((frame[band] ?? 0) > (loudest[band] ?? 0)) loudest[band] = frame[band] ?? 0;
    }
  };
  return {
    suddenRiseDb() {
      findLoudestBefore(0);
      return sumOfRises(levels(0), loudest);
    },
    fallSinceDb(hopsAgo) {
      findLoudestBefore(hopsAgo);
      return meanFall(levels(hopsAgo), levels(0), loudest);
    },
    watch(frame) {
      spectrum.read(frame, 0, power);
      bandPowers(power, spectrum.binHz, edges, sums);
      newest = (newest + 1) % HELD_HOPS;
      const now = levels(0);
      for (let band = 0; band < count; band++) now[band] = (sums[band] ?? 0) + SILENT_POWER;
      powersToDecibels(now);
    },
  };
}

/** Below this nothing counts: exact zeros, and the rounding of 16-bit recordings. */
export const SILENCE_DBFS = -110;
export const SILENT_POWER = 1e-11;
const HELD_HOPS = 64;
const REFERENCE_FROM_HOPS = 6;
const REFERENCE_TO_HOPS = 34;
/** What a beat, or noise, can do in one band by itself. */
const IDLE_RISE_DB = 4;
const LARGEST_RISE_DB = 12;

function sumOfRises(levels: Float32Array, loudest: Float32Array): number {
  let sum = 0;
  for (let band = 0; band < levels.length; band++) {
    const riseDb = (levels[band] ?? 0) - (loudest[band] ?? 0) - IDLE_RISE_DB;
    sum += Math.min(LARGEST_RISE_DB, Math.max(0, riseDb));
  }
  return sum;
}

function meanFall(then: Float32Array, now: Float32Array, loudest: Float32Array): number {
  let sum = 0;
  let count = 0;
  for (let band = 0; band < then.length; band++) {
    if ((then[band] ?? 0) - (loudest[band] ?? 0) < 2 * IDLE_RISE_DB) continue;
    sum += (then[band] ?? 0) - (now[band] ?? 0);
    count++;
  }
  return count === 0 ? 0 : sum / count;
}
