/**
 * The sound of a take as it is stored: a FLAC file of 24 bits, in which 16 bits follow the take's own loudness.
 *
 * The grid on which samples are rounded is 2⁻¹⁵ of the smallest power of two that holds the peak, and never finer than the
 * file's 24 bits: the rounding stays about 98 dB below a full-scale sine of that size, far under any room. What came from a
 * 16-bit device or file lies on the grid already and is kept exactly. No dither: rounding a live room's noise leaves none of
 * the distortion that dither is there to hide, and the same sound gives the same bytes.
 */
import { readAllSamples } from './audioStream.ts';
import { bytesAsSource } from './byteSource.ts';
import { FLAC_BITS } from './flacSubframe.ts';
import { openAudio } from './openAudio.ts';
import { writeFlac } from './writeFlac.ts';

/** Followed by the take's peak. */
const KEPT_BITS = 16;

/** @param samples full scale ±1; what goes beyond is held there */
export function encodeTakeSound(samples: Float32Array, sampleRateHz: number): Uint8Array<ArrayBuffer> {
  return writeFlac(onOwnGrid(samples), sampleRateHz);
}

export type DecodedSound = { readonly samples: Float32Array; readonly sampleRateHz: number };

/** @throws {Error} where the bytes are no sound, or not all of it, with the reason */
export async function decodeTakeSound(bytes: Uint8Array): Promise<DecodedSound> {
  const outcome = await openAudio(bytesAsSource(bytes));
  if (!outcome.opened) throw new Error(`the stored sound cannot be read: ${outcome.fault.message}`);
  const samples = await readAllSamples(outcome.audio);
  const [warning] = outcome.audio.warnings;
  if (warning) throw new Error(`the stored sound is damaged: ${warning.message}`);
  return { samples, sampleRateHz: outcome.audio.sampleRateHz };
}

/** Whole numbers of 24 bits. */
function onOwnGrid(samples: Float32Array): Int32Array {
  const peak = samples.reduce((largest, sample) => Math.max(largest, Math.abs(sample)), 0);
  const headroomBits = peak > 0 ? Math.floor(-Math.log2(peak)) : 0;
  const finerBits = Math.min(FLAC_BITS - KEPT_BITS, Math.max(0, headroomBits));
  const stepsPerUnit = 2 ** (KEPT_BITS - 1 + finerBits);
  const unit = 2 ** (FLAC_BITS - KEPT_BITS - finerBits);
  return Int32Array.from(samples, (sample) => {
    const step = Math.round(sample * stepsPerUnit);
    return Math.max(-stepsPerUnit, Math.min(stepsPerUnit - 1, step)) * unit;
  });
}
