/** Linear algebra of small symmetric positive matrices (row by row, `size` × `size`), by Cholesky's factorisation. */

/** Lower factor L with L·Lᵀ = matrix, or undefined where the matrix is not positive definite. */
function choleskyFactor(matrix: Float64Array, size: number): Float64Array | undefined {
  const factor = new Float64Array(size * size);
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i * size + j]!;
      for (let k = 0; k < j; k++) sum -= factor[i * size + k]! * factor[j * size + k]!;
      if (i === j) {
        if (!(sum > 1e-13 * Math.abs(matrix[i * size + i]!))) return undefined;
        factor[i * size + i] = Math.sqrt(sum);
      } else {
        factor[i * size + j] = sum / factor[j * size + j]!;
      }
    }
  }
  return factor;
}

/** Solves matrix·x = right. Undefined where the matrix is not positive definite. */
export function choleskySolve(matrix: Float64Array, right: Float64Array, size: number): Float64Array | undefined {
  const factor = choleskyFactor(matrix, size);
  return factor && solveWithFactor(factor, right, size);
}

function solveWithFactor(factor: Float64Array, right: Float64Array, size: number): Float64Array {
  const x = Float64Array.from(right);
  for (let i = 0; i < size; i++) {
    for (let k = 0; k < i; k++) x[i]! -= factor[i * size + k]! * x[k]!;
    x[i]! /= factor[i * size + i]!;
  }
  for (let i = size - 1; i >= 0; i--) {
    for (let k = i + 1; k < size; k++) x[i]! -= factor[k * size + i]! * x[k]!;
    x[i]! /= factor[i * size + i]!;
  }
  return x;
}

/** Inverse of a symmetric positive definite matrix. Undefined where it has none. */
export function invertSymmetric(matrix: Float64Array, size: number): Float64Array | undefined {
  const scale = new Float64Array(size);
  for (let i = 0; i < size; i++) scale[i] = 1 / Math.sqrt(Math.max(matrix[i * size + i]!, Number.MIN_VALUE));
  const scaled = matrix.map((value, index) => value * scale[Math.floor(index / size)]! * scale[index % size]!);
  const factor = choleskyFactor(scaled, size);
  if (!factor) return undefined;
  const inverse = new Float64Array(size * size);
  for (let column = 0; column < size; column++) {
    const unit = new Float64Array(size);
    unit[column] = 1;
    const x = solveWithFactor(factor, unit, size);
    for (let row = 0; row < size; row++) inverse[row * size + column] = x[row]! * scale[row]! * scale[column]!;
  }
  return inverse;
}
