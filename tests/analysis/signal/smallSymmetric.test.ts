import { inverse, Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { choleskySolve, invertSymmetric } from '../../../src/analysis/signal/smallSymmetric.ts';
import { seededRandom } from '../../support/seededRandom.ts';

/** GᵀG of a tall random G, its rows and columns then scaled: positive definite, as normal equations are. */
function normalMatrix(size: number, seed: number, scale: (index: number) => number): Float64Array {
  const { normal } = seededRandom(seed);
  const rows = Array.from({ length: size + 4 }, () => Array.from({ length: size }, normal));
  const entry = (i: number, j: number) => rows.reduce((sum, row) => sum + row[i]! * row[j]!, 0) * scale(i) * scale(j);
  return Float64Array.from({ length: size * size }, (_, k) => entry(Math.floor(k / size), k % size));
}

const CASES = [1, 2, 4, 8, 12].flatMap((size) => [
  { size, scaling: 'even', scale: () => 1 },
  { size, scaling: 'over ten decades', scale: (index: number) => 10 ** ((10 * index) / size - 5) },
]);

describe.each(CASES)('a symmetric matrix of size $size, scaled $scaling', ({ size, scale }) => {
  const matrix = normalMatrix(size, 40 + size, scale);
  const peer = Matrix.from1DArray(size, size, matrix);
  const right = Float64Array.from({ length: size }, (_, i) => scale(i) * (i + 1));

  it('is inverted as by ml-matrix', () => {
    const own = invertSymmetric(matrix, size)!;
    const other = inverse(peer).to1DArray();
    // Relative to the size of the row and column: the off-diagonal may be small by cancellation.
    own.forEach((value, k) => {
      const size2 = Math.sqrt(own[Math.floor(k / size) * (size + 1)]! * own[(k % size) * (size + 1)]!);
      expect(Math.abs(value - other[k]!) / size2).toBeLessThan(1e-8);
    });
  });

  it('solves for a right side as ml-matrix does', () => {
    const own = choleskySolve(matrix, right, size)!;
    const other = solve(peer, Matrix.columnVector([...right])).to1DArray();
    own.forEach((value, i) => {
      expect(Math.abs(value / other[i]! - 1)).toBeLessThan(1e-7);
    });
    expect(right[0]).toBe(scale(0));
  });
});

describe('a matrix that is not positive definite', () => {
  it.each([
    { name: 'indefinite', matrix: [1, 2, 2, 1] },
    { name: 'of rank one', matrix: [1, 1, 1, 1] },
    { name: 'zero', matrix: [0, 0, 0, 0] },
    { name: 'not a number', matrix: [Number.NaN, 0, 0, 1] },
  ])('has no solution and no inverse: $name', ({ matrix }) => {
    expect(choleskySolve(Float64Array.from(matrix), new Float64Array(2), 2)).toBeUndefined();
    expect(invertSymmetric(Float64Array.from(matrix), 2)).toBeUndefined();
  });
});
