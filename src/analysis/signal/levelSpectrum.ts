/** A sound's spectrum as a line to look at. */
import { powerOfTwoFrom, powerSpectrum } from './fourier.ts';
import { blackmanHarris } from './window.ts';

export type SpectrumPoint = { readonly frequencyHz: number; readonly levelDb: number };

export type SpectrumRequest = {
  readonly startIndex: number;
  /** Length of the stretch that is looked at; the sound's end cuts it short. */
  readonly durationS: number;
  readonly highestHz: number;
  /** The line has so many points: each is the loudest bin of its stretch, so that no partial is lost between two. */
  readonly pointCount: number;
};

/** Levels relative to full scale: a steady full-scale sine shows 0 dB, one that decays less. Empty where the sound is shorter than 64 samples. */
export function levelSpectrum(samples: Float32Array, sampleRateHz: number, request: SpectrumRequest): SpectrumPoint[] {
  const { startIndex, durationS, highestHz, pointCount } = request;
  const stretch = samples.subarray(startIndex, startIndex + Math.round(durationS * sampleRateHz));
  if (stretch.length < 64) return [];
  const window = blackmanHarris(stretch.length);
  const windowSum = window.reduce((sum, weight) => sum + weight, 0);
  const frame = Float64Array.from(stretch, (sample, index) => sample * (window[index] ?? 0));
  const size = powerOfTwoFrom(stretch.length);
  const power = powerSpectrum(frame, size);
  const binHz = sampleRateHz / size;
  const stepHz = Math.min(highestHz, sampleRateHz / 2) / pointCount;
  return Array.from({ length: pointCount }, (_, index) => {
    const first = Math.round((index * stepHz) / binHz);
    const last = Math.max(first + 1, Math.round(((index + 1) * stepHz) / binHz));
    let loudest = first;
    for (let bin = first; bin < last; bin++) if ((power[bin] ?? 0) > (power[loudest] ?? 0)) loudest = bin;
    const amplitude = (2 * Math.sqrt(power[loudest] ?? 0)) / windowSum;
    return { frequencyHz: loudest * binHz, levelDb: 20 * Math.log10(Math.max(amplitude, 1e-12)) };
  });
}
