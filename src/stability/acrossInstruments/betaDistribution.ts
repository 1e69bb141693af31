/**
 * The beta distribution, for limits of shares from small numbers.
 * Source: regularised incomplete beta function by its continued fraction, NIST Digital Library of Mathematical Functions 8.17(v), summed by
 * Lentz's method (W. J. Lentz, Appl. Opt. 15 (1976) 668–671); logarithm of the gamma function by C. Lanczos, SIAM J. Numer. Anal. B 1
 * (1964) 86–96, with coefficients for g = 7 from memory. Good to ten digits for parameters up to some thousands.
 */

export type Beta = { readonly a: number; readonly b: number };

/** Probability of a value up to x. @throws {RangeError} if a parameter is not above zero */
export function betaBelow(x: number, { a, b }: Beta): number {
  if (!(a > 0 && b > 0)) throw new RangeError(`a and b must be above zero, got ${a} and ${b}`);
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(lnGamma(a + b) - lnGamma(a) - lnGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
  // The fraction converges fast on the near side of the mean; the other side is its mirror image.
  return x < (a + 1) / (a + b + 2)
    ? (front * continuedFraction(x, a, b)) / a
    : 1 - (front * continuedFraction(1 - x, b, a)) / b;
}

const HALVINGS = 60;

/** The value below which a given probability lies. @param probability between 0 and 1 */
export function betaQuantile(probability: number, beta: Beta): number {
  let [low, high] = [0, 1];
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const middle = (low + high) / 2;
    if (betaBelow(middle, beta) < probability) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

const TINY = 1e-300;
const MOST_TERMS = 500;

function continuedFraction(x: number, a: number, b: number): number {
  let c = 1;
  let d = 1 / awayFromZero(1 - ((a + b) * x) / (a + 1));
  let sum = d;
  for (let m = 1; m <= MOST_TERMS; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / awayFromZero(1 + even * d);
    c = awayFromZero(1 + even / c);
    sum *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / awayFromZero(1 + odd * d);
    c = awayFromZero(1 + odd / c);
    sum *= d * c;
    if (Math.abs(d * c - 1) < 1e-14) break;
  }
  return sum;
}

function awayFromZero(value: number): number {
  return Math.abs(value) < TINY ? TINY : value;
}

const LANCZOS = [
  676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059, 12.507343278686905,
  -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
];

function lnGamma(value: number): number {
  if (value < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * value)) - lnGamma(1 - value);
  const x = value - 1;
  const series = LANCZOS.reduce((sum, coefficient, index) => sum + coefficient / (x + index + 1), 0.99999999999980993);
  const t = x + 7.5;
  return 0.5 * Math.log(2 * Math.PI) + (x + 0.5) * Math.log(t) - t + Math.log(series);
}
