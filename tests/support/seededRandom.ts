/**
 * Repeatable random numbers: the same seed gives the same sequence on every machine.
 *
 * Source: xoshiro128** by D. Blackman and S. Vigna, "Scrambled linear pseudorandom number generators",
 * ACM Trans. Math. Softw. 47 (2021), seeded through a 32-bit mixing function; normal deviates by G. Marsaglia's polar method (1964).
 */

export type SeededRandom = {
  /** Evenly spread in 0 ≤ x < 1, 32 bits. */
  uniform(): number;
  /** Mean 0, variance 1. */
  normal(): number;
};

/** @throws {RangeError} if the seed is not a whole number */
export function seededRandom(seed: number): SeededRandom {
  if (!Number.isInteger(seed)) throw new RangeError(`seed must be a whole number, got ${seed}`);
  const uniform = xoshiro128(seed);
  let spare: number | undefined;
  const normal = () => {
    if (spare !== undefined) {
      const value = spare;
      spare = undefined;
      return value;
    }
    for (;;) {
      const x = 2 * uniform() - 1;
      const y = 2 * uniform() - 1;
      const square = x * x + y * y;
      if (square >= 1 || square === 0) continue;
      const factor = Math.sqrt((-2 * Math.log(square)) / square);
      spare = y * factor;
      return x * factor;
    }
  };
  return { uniform, normal };
}

function xoshiro128(seed: number): () => number {
  const next = mixer(seed);
  let [a, b, c, d] = [next(), next(), next(), next()];
  return () => {
    const result = Math.imul(rotateLeft(Math.imul(b, 5), 7), 9) >>> 0;
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = rotateLeft(d, 11);
    return result / 2 ** 32;
  };
}

/** Spreads neighbouring seeds far apart. */
function mixer(seed: number): () => number {
  let state = (seed ^ Math.imul(Math.floor(seed / 2 ** 32), 0x9e3779b1)) | 0;
  return () => {
    state = (state + 0x9e3779b9) | 0;
    let mixed = state ^ (state >>> 16);
    mixed = Math.imul(mixed, 0x21f0aaad);
    mixed ^= mixed >>> 15;
    mixed = Math.imul(mixed, 0x735a2d97);
    return mixed ^ (mixed >>> 15);
  };
}

function rotateLeft(value: number, bits: number): number {
  return (value << bits) | (value >>> (32 - bits));
}
