/** Which of many departures are more than chance, when many notes are looked at at once. */

/**
 * Benjamini and Hochberg's procedure: of the notes called, no more than the share `falseShare` are called by chance on average.
 * Source: Y. Benjamini, Y. Hochberg, J. R. Stat. Soc. B 57 (1995) 289–300.
 * @param chances each note's chance of departing as far as it does if it were an ordinary one
 */
export function beyondChance(chances: readonly number[], falseShare: number): boolean[] {
  const sorted = [...chances].sort((a, b) => a - b);
  const limit = sorted.findLast((chance, index) => chance <= (falseShare * (index + 1)) / sorted.length);
  return chances.map((chance) => limit !== undefined && chance <= limit);
}

/**
 * The chance that a departure of an ordinary note is as far off as this or farther, on this side only, for a spread that was
 * itself estimated: Student's t, by Wallace's approximation (D. L. Wallace, Ann. Math. Stat. 30 (1959) 1124–1130), good to
 * 15 % at 5 degrees of freedom and to 6 % from 10 up.
 * @param ratio departure over its standard uncertainty, not negative
 */
export function chanceBeyond(ratio: number, freedom: number): number {
  const normal = ((8 * freedom + 1) / (8 * freedom + 3)) * Math.sqrt(freedom * Math.log1p(ratio ** 2 / freedom));
  return upperTail(normal);
}

/**
 * The share of a standard normal distribution above x ≥ 0: a continued fraction (Laplace) beyond 2, a power series below
 * (M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions (1964), 26.2.10 and 26.2.14).
 */
function upperTail(x: number): number {
  const density = Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI);
  if (x > 2) {
    let fraction = x;
    for (let term = 40; term >= 1; term--) fraction = x + term / fraction;
    return density / fraction;
  }
  let sum = x;
  let term = x;
  for (let index = 1; index < 40; index++) {
    term *= -(x * x) / (2 * index);
    sum += term / (2 * index + 1);
  }
  return 0.5 - sum / Math.sqrt(2 * Math.PI);
}
