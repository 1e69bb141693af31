/** Bytes of a WAV file's data as samples of one channel. */
import type { SampleCoding } from './waveFormat.ts';

export type WaveFrames = { readonly coding: SampleCoding; readonly channelCount: number };
export type DecodedFrames = {
  readonly samples: Float32Array;
  /** Floating-point samples that were no numbers, or infinite, and became 0. */
  readonly notNumberCount: number;
};

/**
 * The mean of the channels of each whole frame in `bytes`, full scale ±1: an integer of N bits is divided by 2^(N−1), an
 * 8-bit one after taking 128 off.
 */
export function decodeWaveFrames(bytes: Uint8Array, { coding, channelCount }: WaveFrames): DecodedFrames {
  const read = sampleReader(new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength), coding);
  const samples = new Float32Array(Math.floor(bytes.length / (coding.byteCount * channelCount)));
  const isFloat = coding.kind === 'float';
  let notNumberCount = 0;
  let at = 0;
  for (let index = 0; index < samples.length; index += 1) {
    let sum = 0;
    for (let channel = 0; channel < channelCount; channel += 1) {
      const value = read(at);
      at += coding.byteCount;
      if (isFloat && !Number.isFinite(Math.fround(value))) notNumberCount += 1;
      else sum += value;
    }
    samples[index] = sum / channelCount;
  }
  return { samples, notNumberCount };
}

function sampleReader(view: DataView, coding: SampleCoding): (at: number) => number {
  if (coding.kind === 'float')
    return coding.byteCount === 4 ? (at) => view.getFloat32(at, true) : (at) => view.getFloat64(at, true);
  switch (coding.byteCount) {
    case 1:
      return (at) => (view.getUint8(at) - 128) / 2 ** 7;
    case 2:
      return (at) => view.getInt16(at, true) / 2 ** 15;
    case 3:
      return (at) => (view.getInt8(at + 2) * 2 ** 16 + view.getUint16(at, true)) / 2 ** 23;
    default:
      return (at) => view.getInt32(at, true) / 2 ** 31;
  }
}
