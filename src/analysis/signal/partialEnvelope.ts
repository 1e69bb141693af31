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
export function partialEnvelope(sound: StruckSamples, request: EnvelopeRequest): EnvelopePoint[] {
  const levels = partialLevels(sound, request);
  const loudestDb = levels.reduce((loudest, { levelDb }) => Math.max(loudest, levelDb), Number.NEGATIVE_INFINITY);
  if (loudestDb === Number.NEGATIVE_INFINITY) return [];
  return levels.map(({ timeS, levelDb }) => ({ timeS, levelDb: Math.max(DEEPEST_DB, levelDb - loudestDb) }));
}

/**
 * The same relative to full scale, as components are given: a full-scale sine is 0 dB, silence minus infinity. Times from the sound's first
 * sample, each in the middle of what it is taken from. Empty where the sound is too short.
 */
export function partialLevels(sound: StruckSamples, { centreHz, spacingHz }: EnvelopeRequest): EnvelopePoint[] {
  const { samples, sampleRateHz, onsetIndex } = sound;
  const subband = extractSubband(samples, {
    sampleRateHz,
    startIndex: onsetIndex,
    endIndex: samples.length,
    centreHz,
    spacingHz,
    leastRateHz: LEAST_RATE_HZ,
  });
  const { re, im, averageLength, blockLength } = subband;
  const middle = (averageLength * (blockLength + 2)) / 2;
  // Half of a real sine's size is at its negative frequency, which is left out.
  return Array.from(re, (value, index) => ({
    timeS: (onsetIndex + index * averageLength * blockLength + middle) / sampleRateHz,
    levelDb: 20 * Math.log10(2 * Math.hypot(value, im[index] ?? 0)),
  }));
}
