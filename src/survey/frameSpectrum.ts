/** Power spectra of many frames of one length, without making new arrays for each: a stream needs some 250 of them a second. */
import FFT from 'fft.js';

export type FrameSpectrum = {
  readonly fftSize: number;
  /** Distance of two bins. */
  readonly binHz: number;
  /**
   * Fills `power` (bin k at k·binHz, as many bins as it is long) from the frame that begins at `start` of `samples`; samples
   * outside the array count as zero. A sine of amplitude 1 on a bin gives 1, so that 10·log10 of it is dBFS.
   */
  read(samples: Float32Array, start: number, power: Float64Array): void;
};

type RealTransformer = {
  createComplexArray(): number[];
  realTransform(out: number[], input: ArrayLike<number>): void;
};

/** Hann window of `frameLength` samples (F. J. Harris, Proc. IEEE 66 (1978) 51–83), padded with zeros to the next power of two. */
export function createFrameSpectrum(frameLength: number, sampleRateHz: number): FrameSpectrum {
  const fftSize = 2 ** Math.ceil(Math.log2(frameLength));
  const transformer = new FFT(fftSize) as RealTransformer;
  const window = Float64Array.from(
    { length: frameLength },
    (_, index) => (4 / frameLength) * (0.5 - 0.5 * Math.cos((2 * Math.PI * (index + 0.5)) / frameLength)),
  );
  const input = new Array<number>(fftSize).fill(0);
  const output = transformer.createComplexArray();
  return {
    fftSize,
    binHz: sampleRateHz / fftSize,
    read(samples, start, power) {
      for (let index = 0; index < frameLength; index++)
        input[index] = (window[index] ?? 0) * (samples[start + index] ?? 0);
      transformer.realTransform(output, input);
      for (let bin = 0; bin < power.length; bin++)
        power[bin] = (output[2 * bin] ?? 0) ** 2 + (output[2 * bin + 1] ?? 0) ** 2;
    },
  };
}
