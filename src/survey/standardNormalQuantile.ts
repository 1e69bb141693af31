/** The value that a standard normal figure stays below with a given probability. */

/**
 * Rational approximation, absolute error below 4.5e-4.
 * Source: M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions (1964), 26.2.23 (after C. Hastings).
 * @throws {RangeError} unless 0 < probability < 1
 * @example standardNormalQuantile(0.975) // 1.960
 */
export function standardNormalQuantile(probability: number): number {
  if (!(probability > 0 && probability < 1))
    throw new RangeError(`probability must lie between 0 and 1, got ${probability}`);
  if (probability < 0.5) return -standardNormalQuantile(1 - probability);
  const t = Math.sqrt(-2 * Math.log(1 - probability));
  const numerator = 2.515517 + t * (0.802853 + t * 0.010328);
  const denominator = 1 + t * (1.432788 + t * (0.189269 + t * 0.001308));
  return t - numerator / denominator;
}
