/**
 * Cramér–Rao bounds by another way than the project's: the derivatives of a sampled model are taken by central differences, and
 * their matrix is inverted by ml-matrix. No closed form, no assumption about phases.
 */
import { inverse, Matrix } from 'ml-matrix';

export type SampledModel = (parameters: readonly number[]) => Float64Array;

/** Covariance that no unbiased estimator of the parameters beats, in white noise of `noiseRms` per sample. */
export function boundCovariance(
  model: SampledModel,
  parameters: readonly number[],
  steps: readonly number[],
  noiseRms: number,
): number[][] {
  const slopes = parameters.map((_, index) => slopeOf(model, parameters, index, steps[index]!));
  const information = slopes.map((a) => slopes.map((b) => dot(a, b) / noiseRms ** 2));
  return inverse(new Matrix(information)).to2DArray();
}

function slopeOf(model: SampledModel, parameters: readonly number[], index: number, step: number): Float64Array {
  const moved = (by: number) => model(parameters.map((value, i) => (i === index ? value + by : value)));
  const after = moved(step);
  const before = moved(-step);
  return after.map((value, n) => (value - before[n]!) / (2 * step));
}

function dot(a: Float64Array, b: Float64Array): number {
  return a.reduce((sum, value, n) => sum + value * b[n]!, 0);
}

/** Damped real sinusoids, four parameters each: frequency in Hz, damping per second, logarithm of the amplitude, phase. */
export function dampedTones(count: number, sampleRateHz: number): SampledModel {
  return (parameters) => {
    const samples = new Float64Array(count);
    for (let first = 0; first < parameters.length; first += 4) {
      const [hz, dampingPerS, logAmplitude, phase] = parameters.slice(first, first + 4) as [
        number,
        number,
        number,
        number,
      ];
      for (let n = 0; n < count; n++) {
        const timeS = n / sampleRateHz;
        samples[n]! += Math.exp(logAmplitude - dampingPerS * timeS) * Math.cos(2 * Math.PI * hz * timeS + phase);
      }
    }
    return samples;
  };
}

/** Steps that suit `dampedTones`, for each tone. */
export const DAMPED_TONE_STEPS = [1e-4, 1e-4, 1e-5, 1e-5] as const;
