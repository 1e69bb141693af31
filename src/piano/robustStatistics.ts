/** Middle and spread that one wild figure cannot move. Common practice in robust statistics. */

/** A normal law's standard deviation over its median absolute deviation: 1 / Φ⁻¹(3/4). Standing: definition. */
export const NORMAL_SIGMA_PER_MAD = 1.482602218505602;

/** @throws {RangeError} if there are no values */
export function medianOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const upper = sorted[Math.floor(sorted.length / 2)];
  const lower = sorted[Math.floor((sorted.length - 1) / 2)];
  if (upper === undefined || lower === undefined)
    throw new RangeError('values must hold at least one number, got none');
  return (lower + upper) / 2;
}

/** Standard deviation of the values about `center`, from their median absolute deviation, as if they were normal. */
export function robustScatter(values: readonly number[], center: number = medianOf(values)): number {
  return NORMAL_SIGMA_PER_MAD * medianOf(values.map((value) => Math.abs(value - center)));
}
