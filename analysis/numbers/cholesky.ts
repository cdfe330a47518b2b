/** Cholesky factor of a covariance matrix, for drawing from it. */
import { OutOfRange } from '../remarks/index.ts';

/**
 * Lower triangular L with L L' = matrix. A zero variance is allowed: that row stays zero.
 * @param matrix symmetric, positive semi-definite, square list of rows, any units
 * @returns L as rows of growing length, square roots of those units
 * @throws OutOfRange when the matrix is not positive semi-definite
 * @source textbook factorisation [memory]
 */
export function lowerCholesky(matrix: readonly (readonly number[])[]): number[][] {
  const L: number[][] = [];
  for (let i = 0; i < matrix.length; i += 1) {
    const row: number[] = [];
    for (let j = 0; j <= i; j += 1) {
      const a = matrix[i]?.[j] ?? 0;
      const other = L[j] ?? row;
      let sum = a;
      for (let k = 0; k < j; k += 1) sum -= (row[k] ?? 0) * (other[k] ?? 0);
      if (j < i) {
        const pivot = other[j] ?? 0;
        row.push(pivot > 0 ? sum / pivot : 0);
      } else {
        if (sum < -1e-9 * Math.abs(a)) throw new OutOfRange('matrix diagonal', sum, 'positive semi-definite');
        row.push(Math.sqrt(Math.max(0, sum)));
      }
    }
    L.push(row);
  }
  return L;
}
