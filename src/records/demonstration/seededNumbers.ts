/**
 * Repeatable random numbers for the invented workshop: the same seed gives the same workshop on every machine.
 * Source: xorshift128 by G. Marsaglia, "Xorshift RNGs", Journal of Statistical Software 8 (2003), issue 14; normal deviates by
 * G. E. P. Box and M. E. Muller, Ann. Math. Statist. 29 (1958) 610–611. Not for ids that must not be guessed.
 */
import { type AnyId, uuidFromBytes } from '../newId.ts';

export type SeededNumbers = {
  /** Evenly spread in 0 < x < 1. */
  uniform(): number;
  between(low: number, high: number): number;
  /** Mean 0, the given standard deviation. */
  normal(standardDeviation: number): number;
  /** One of the choices, all equally likely. */
  oneOf<Choice>(choices: readonly [Choice, ...Choice[]]): Choice;
  id<Name extends AnyId>(): Name;
};

/** @throws {RangeError} if the seed is not a whole number */
export function seededNumbers(seed: number): SeededNumbers {
  if (!Number.isInteger(seed)) throw new RangeError(`seed must be a whole number, got ${seed}`);
  const bits = xorshift128(seed);
  const uniform = (): number => (bits() + 0.5) / 2 ** 32;
  const normal = (standardDeviation: number): number =>
    standardDeviation * Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
  return {
    uniform,
    normal,
    between: (low, high) => low + (high - low) * uniform(),
    oneOf: (choices) => choices[Math.floor(uniform() * choices.length)] ?? choices[0],
    id: <Name extends AnyId>() => uuidFromBytes(sixteenBytes(bits)) as Name,
  };
}

const WARM_UP_STEPS = 32;

function xorshift128(seed: number): () => number {
  // Marsaglia's starting values, the first one mixed with the seed; a few steps spread it over the whole state.
  let [x, y, z, w] = [123456789 ^ seed, 362436069, 521288629, 88675123];
  const next = (): number => {
    const mixed = x ^ (x << 11);
    [x, y, z] = [y, z, w];
    w = w ^ (w >>> 19) ^ mixed ^ (mixed >>> 8);
    return w >>> 0;
  };
  for (let step = 0; step < WARM_UP_STEPS; step += 1) next();
  return next;
}

function sixteenBytes(bits: () => number): Uint8Array {
  const words = Uint32Array.from({ length: 4 }, bits);
  return Uint8Array.from({ length: 16 }, (_, index) => ((words[index >> 2] ?? 0) >>> (8 * (index & 3))) & 0xff);
}
