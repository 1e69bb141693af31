import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { invert, solveRidge } from '../../../src/stability/drift/ridge.ts';
import { type SeededRandom, seededRandom } from '../../support/seededRandom.ts';

function randomProblem(random: SeededRandom, rowCount: number, size: number) {
  return {
    rows: Array.from({ length: rowCount }, () => ({
      values: Array.from({ length: size }, () => random.normal()),
      target: 3 * random.normal(),
      weight: 0.1 + random.uniform(),
    })),
    priors: Array.from({ length: size }, () => ({ mean: random.normal(), deviation: 0.2 + random.uniform() })),
  };
}

/** By a general library: the priors are further rows, and QR solves the whole without normal equations. */
function withMlMatrix({ rows, priors }: ReturnType<typeof randomProblem>): number[] {
  const design = [
    ...rows.map(({ values, weight }) => values.map((value) => value * Math.sqrt(weight))),
    ...priors.map(({ deviation }, i) => priors.map((_, j) => (i === j ? 1 / deviation : 0))),
  ];
  const target = [
    ...rows.map(({ target, weight }) => target * Math.sqrt(weight)),
    ...priors.map(({ mean, deviation }) => mean / deviation),
  ];
  return solve(new Matrix(design), Matrix.columnVector(target)).to1DArray();
}

describe('solveRidge', () => {
  it.each([
    { seed: 1, rowCount: 40, size: 7 },
    { seed: 2, rowCount: 3, size: 6 },
    { seed: 3, rowCount: 0, size: 4 },
  ])('agrees with a general library for $rowCount rows and $size coefficients', ({ seed, rowCount, size }) => {
    const problem = randomProblem(seededRandom(seed), rowCount, size);
    const ours = solveRidge(problem);
    expect(ours).toHaveLength(size);
    for (const [i, value] of withMlMatrix(problem).entries()) expect(ours[i]).toBeCloseTo(value, 9);
  });
});

it('invert gives the matrix that undoes another', () => {
  const random = seededRandom(5);
  const factor = new Matrix(Array.from({ length: 6 }, () => Array.from({ length: 6 }, () => random.normal())));
  const positive = factor.mmul(factor.transpose()).add(Matrix.eye(6, 6));
  const product = positive.mmul(new Matrix(invert(positive.to2DArray())));
  expect(product.sub(Matrix.eye(6, 6)).abs().max()).toBeLessThan(1e-9);
});
