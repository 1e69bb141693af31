/** Robust figures for lists of numbers, 0 where a list is empty. */
import { medianOf, robustScatter } from '../../piano/robustStatistics.ts';

export function median(values: readonly number[]): number {
  return values.length === 0 ? 0 : medianOf(values);
}

/** Median absolute deviation, scaled so that it is the standard deviation of a normal distribution. */
export function robustDeviation(values: readonly number[], centre = median(values)): number {
  return values.length === 0 ? 0 : robustScatter(values, centre);
}

/** Student's t weights, four degrees of freedom: what lies far off loses its say. */
export function studentWeight(standardised: number): number {
  return 5 / (4 + standardised ** 2);
}

/** Distribution function of the standard normal (Abramowitz and Stegun 1964, 7.1.26: error below 1.5e−7). */
export function normalBelow(z: number): number {
  const t = 1 / (1 + 0.3275911 * (Math.abs(z) / Math.SQRT2));
  const series = t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  const tail = 0.5 * series * Math.exp((-z * z) / 2);
  return z < 0 ? tail : 1 - tail;
}
