/** Middle and spread that a few wild figures cannot move. Common practice in robust statistics. */

/** A normal law's standard deviation over its median absolute deviation: 1 / Φ⁻¹(3/4). Standing: definition. */
export const NORMAL_SIGMA_PER_MAD = 1.482602218505602;

/** @throws {RangeError} if there are no values */
export function middleOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const upper = sorted[Math.floor(sorted.length / 2)];
  const lower = sorted[Math.floor((sorted.length - 1) / 2)];
  if (upper === undefined || lower === undefined)
    throw new RangeError('values must hold at least one number, got none');
  return (lower + upper) / 2;
}

/** Standard deviation about the middle, from the median absolute deviation, as if the values were normal. */
export function robustSigma(values: readonly number[], middle: number = middleOf(values)): number {
  return NORMAL_SIGMA_PER_MAD * middleOf(values.map((value) => Math.abs(value - middle)));
}
