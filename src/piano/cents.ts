/**
 * Intervals in cents: 1200·log2 of a frequency ratio (A. J. Ellis 1885, in his translation of Helmholtz; common practice).
 */

/** @example hzToCents(441, 440) // 3.9302 */
export function hzToCents(frequencyHz: number, referenceHz: number): number {
  return 1200 * Math.log2(frequencyHz / referenceHz);
}

/** The frequency `offsetCents` above (or below, if negative) the reference. */
export function centsToHz(offsetCents: number, referenceHz: number): number {
  return referenceHz * 2 ** (offsetCents / 1200);
}

/** A small standard uncertainty of a frequency, seen as cents: first order, good to 0.1 % below 2 cents. */
export function uncertaintyHzToCents(standardUncertaintyHz: number, frequencyHz: number): number {
  return ((1200 / Math.LN2) * standardUncertaintyHz) / frequencyHz;
}
