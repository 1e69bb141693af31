/** Weighted least squares with a normal prior on each coefficient. */

export type RidgeProblem = {
  readonly rows: readonly { readonly values: readonly number[]; readonly target: number; readonly weight: number }[];
  readonly priors: readonly { readonly mean: number; readonly deviation: number }[];
};

/** Coefficients, one for each prior. The priors make the problem solvable however few rows there are. */
export function solveRidge(problem: RidgeProblem): number[] {
  const size = problem.priors.length;
  const matrix = problem.priors.map((prior, i) =>
    Array.from({ length: size }, (_, j) => (i === j ? 1 / prior.deviation ** 2 : 0)),
  );
  const right = problem.priors.map((prior) => prior.mean / prior.deviation ** 2);
  for (const { values, target, weight } of problem.rows) {
    for (let i = 0; i < size; i++) {
      const scaled = weight * values[i]!;
      right[i]! += scaled * target;
      const row = matrix[i]!;
      for (let j = 0; j < size; j++) row[j]! += scaled * values[j]!;
    }
  }
  return solvePositive(matrix, right);
}

/** Gaussian elimination without pivoting: safe for a symmetric positive definite matrix. */
function solvePositive(matrix: number[][], right: number[]): number[] {
  const size = right.length;
  for (let pivot = 0; pivot < size; pivot++) {
    for (let row = pivot + 1; row < size; row++) {
      const factor = matrix[row]![pivot]! / matrix[pivot]![pivot]!;
      for (let column = pivot; column < size; column++) matrix[row]![column]! -= factor * matrix[pivot]![column]!;
      right[row]! -= factor * right[pivot]!;
    }
  }
  const solution = new Array<number>(size).fill(0);
  for (let row = size - 1; row >= 0; row--) {
    let sum = right[row]!;
    for (let column = row + 1; column < size; column++) sum -= matrix[row]![column]! * solution[column]!;
    solution[row] = sum / matrix[row]![row]!;
  }
  return solution;
}

/** Inverse of a small symmetric positive definite matrix. */
export function invert(matrix: readonly (readonly number[])[]): number[][] {
  const columns = matrix.map((_, i) =>
    solvePositive(
      matrix.map((row) => [...row]),
      matrix.map((__, j) => (i === j ? 1 : 0)),
    ),
  );
  return matrix.map((_, i) => columns.map((column) => column[i]!));
}
