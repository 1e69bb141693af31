/** Discrete Fourier transforms by fft.js; one instance per size is built and kept, since building costs as much as using. */
import FFT from 'fft.js';

type Transformer = {
  createComplexArray(): number[];
  realTransform(out: number[], input: ArrayLike<number>): void;
  transform(out: number[], input: ArrayLike<number>): void;
};

const transformers = new Map<number, Transformer>();

function transformerOf(size: number): Transformer {
  let transformer = transformers.get(size);
  if (!transformer) {
    if (size < 2 || (size & (size - 1)) !== 0) throw new RangeError(`size must be a power of two, got ${size}`);
    transformer = new FFT(size) as Transformer;
    transformers.set(size, transformer);
  }
  return transformer;
}

/** The smallest power of two that is at least `length`. */
export function powerOfTwoFrom(length: number): number {
  return 2 ** Math.ceil(Math.log2(Math.max(2, length)));
}

/**
 * Power |X_k|² of a real frame for bins 0…size/2 (bin k at k·sampleRateHz/size). The frame is padded with zeros to `size`.
 */
export function powerSpectrum(frame: Float64Array, size: number): Float64Array {
  const transformer = transformerOf(size);
  const input = new Array<number>(size).fill(0);
  for (let i = 0; i < frame.length; i++) input[i] = frame[i]!;
  const output = transformer.createComplexArray();
  transformer.realTransform(output, input);
  const power = new Float64Array(size / 2 + 1);
  for (let k = 0; k <= size / 2; k++) power[k] = output[2 * k]! ** 2 + output[2 * k + 1]! ** 2;
  return power;
}

/** Complex transform of `re + j·im`, padded with zeros to `size`; interleaved real and imaginary parts, length 2·size. */
export function complexSpectrum(re: Float64Array, im: Float64Array, size: number): number[] {
  const transformer = transformerOf(size);
  const input = new Array<number>(2 * size).fill(0);
  for (let i = 0; i < re.length; i++) {
    input[2 * i] = re[i]!;
    input[2 * i + 1] = im[i]!;
  }
  const output = transformer.createComplexArray();
  transformer.transform(output, input);
  return output;
}
