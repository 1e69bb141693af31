/** Samples as a WAV file of one channel. */

export type WaveWidth = '16-bit' | 'float';

/**
 * Whole bytes of a WAV file with a `fmt `, for floating point also a `fact`, and a `data` chunk.
 * 16-bit samples are rounded to the nearest step of 2^-15 and held at full scale; floating-point ones are kept as they are.
 * @throws {RangeError} if the sample rate is not a whole number above zero
 */
export function writeWave(samples: Float32Array, sampleRateHz: number, width: WaveWidth): Uint8Array<ArrayBuffer> {
  if (!Number.isInteger(sampleRateHz) || sampleRateHz <= 0)
    throw new RangeError(`sampleRateHz must be a whole number above zero, got ${sampleRateHz}`);
  const isFloat = width === 'float';
  const sampleBytes = isFloat ? 4 : 2;
  const formatBytes = isFloat ? 18 : 16;
  const factBytes = isFloat ? 12 : 0;
  const dataOffset = 12 + 8 + formatBytes + factBytes + 8;
  const bytes = new Uint8Array(dataOffset + samples.length * sampleBytes);
  const view = new DataView(bytes.buffer);
  putChunk(view, 0, 'RIFF', bytes.length - 8);
  putLetters(view, 8, 'WAVE');
  putChunk(view, 12, 'fmt ', formatBytes);
  view.setUint16(20, isFloat ? 3 : 1, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, sampleRateHz, true);
  view.setUint32(28, sampleRateHz * sampleBytes, true);
  view.setUint16(32, sampleBytes, true);
  view.setUint16(34, 8 * sampleBytes, true);
  if (isFloat) {
    putChunk(view, 38, 'fact', 4);
    view.setUint32(46, samples.length, true);
  }
  putChunk(view, dataOffset - 8, 'data', samples.length * sampleBytes);
  for (let index = 0; index < samples.length; index += 1) {
    const value = samples[index] ?? 0;
    if (isFloat) view.setFloat32(dataOffset + 4 * index, value, true);
    else view.setInt16(dataOffset + 2 * index, Math.max(-32768, Math.min(32767, Math.round(value * 32768))), true);
  }
  return bytes;
}

function putChunk(view: DataView, offset: number, id: string, byteCount: number): void {
  putLetters(view, offset, id);
  view.setUint32(offset + 4, byteCount, true);
}

function putLetters(view: DataView, offset: number, letters: string): void {
  for (let index = 0; index < letters.length; index += 1) view.setUint8(offset + index, letters.charCodeAt(index));
}
