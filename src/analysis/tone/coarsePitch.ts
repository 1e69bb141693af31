/**
 * Proposals for the pitch from a general-purpose estimator (autocorrelation, pitchfinder's ACF2PLUS). It jumps octaves at both ends of
 * the compass, so it only proposes; the comb of partials decides (findNote.ts).
 */
import { ACF2PLUS } from 'pitchfinder';

const FRAME_LENGTH = 2048;
/** Enough for C8's first partial, and its frame still holds three periods of A0. */
const WORKING_RATE_HZ = 16000;

/** Frequencies in Hz heard at two moments after the strike; an empty list where the estimator found nothing. */
export function coarsePitches(samples: Float32Array, onsetIndex: number, sampleRateHz: number): number[] {
  const thinning = Math.max(1, Math.floor(sampleRateHz / WORKING_RATE_HZ));
  const detect = ACF2PLUS({ sampleRate: sampleRateHz / thinning });
  return [0.06, 0.25]
    .map((delayS) => thinnedFrame(samples, onsetIndex + Math.round(delayS * sampleRateHz), thinning))
    .map((frame) => (frame ? detect(frame) : null))
    .filter((hz): hz is number => hz !== null && hz > 20 && hz < 5000);
}

/** A frame at the working rate, scaled to a peak of 0.8, since the estimator has a level gate. Undefined past the end. */
function thinnedFrame(samples: Float32Array, startIndex: number, thinning: number): Float32Array | undefined {
  if (startIndex + FRAME_LENGTH * thinning > samples.length) return undefined;
  const frame = new Float32Array(FRAME_LENGTH);
  let peak = 0;
  for (let i = 0; i < FRAME_LENGTH; i++) {
    let sum = 0;
    for (let j = 0; j < thinning; j++) sum += samples[startIndex + i * thinning + j]!;
    frame[i] = sum;
    peak = Math.max(peak, Math.abs(sum));
  }
  if (peak === 0) return undefined;
  return frame.map((value) => (0.8 * value) / peak);
}
