/** How loud one partial is from moment to moment: where its beats show. */
import { extractSubband } from './subband.ts';

export type EnvelopePoint = { readonly timeS: number; readonly levelDb: number };

export type StruckSamples = {
  readonly samples: Float32Array;
  readonly sampleRateHz: number;
  /** Index of the strike. */
  readonly onsetIndex: number;
};

export type EnvelopeRequest = {
  readonly centreHz: number;
  /** Distance to the next partial. */
  readonly spacingHz: number;
};

/** Fine enough for beats of ten a second. */
const LEAST_RATE_HZ = 50;
/** What lies deeper below the loudest moment is noise to the eye. */
const DEEPEST_DB = -60;

/** In dB below its loudest moment, from the strike on; times from the sound's first sample. Empty where the sound is too short. */
export function partialEnvelope(sound: StruckSamples, { centreHz, spacingHz }: EnvelopeRequest): EnvelopePoint[] {
  const { samples, sampleRateHz, onsetIndex } = sound;
  const subband = extractSubband(samples, {
    sampleRateHz,
    startIndex: onsetIndex,
    endIndex: samples.length,
    centreHz,
    spacingHz,
    leastRateHz: LEAST_RATE_HZ,
  });
  const sizes = Array.from(subband.re, (re, index) => Math.hypot(re, subband.im[index] ?? 0));
  const loudest = sizes.reduce((peak, size) => Math.max(peak, size), 0);
  if (loudest === 0) return [];
  const { averageLength, blockLength } = subband;
  const middle = (averageLength * (blockLength + 2)) / 2;
  return sizes.map((size, index) => ({
    timeS: (onsetIndex + index * averageLength * blockLength + middle) / sampleRateHz,
    levelDb: Math.max(DEEPEST_DB, 20 * Math.log10(size / loudest)),
  }));
}
