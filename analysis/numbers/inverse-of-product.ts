/** The matrix behind every covariance of a fit, from singular values: what the data do not separate is refused. */
import { Matrix, SingularValueDecomposition } from 'ml-matrix';
import { OutOfRange } from '../remarks/index.ts';

/** Singular values below this share of the largest mean that a combination of unknowns is not determined. */
const RANK_TOLERANCE = 1e-10;

/**
 * (J'J)^-1 by singular values of the column-scaled Jacobian.
 * @param J derivatives, one row a residual, any units
 * @param fixed true for columns that are not free, list
 * @returns square matrix as rows, units of the parameters squared over those of the residuals; zero for fixed columns
 * @throws OutOfRange when the columns do not stand apart: the data do not separate the unknowns
 * @source (J'J)^-1 = V S^-2 V' [memory]
 */
export function inverseOfProduct(J: readonly (readonly number[])[], fixed: readonly boolean[] = []): number[][] {
  const p = J[0]?.length ?? 0;
  const free = Array.from({ length: p }, (_, j) => j).filter((j) => !fixed[j]);
  const inverse = Array.from({ length: p }, () => new Array<number>(p).fill(0));
  if (free.length === 0) return inverse;
  const norms = columnNorms(J);
  const scaled = new Matrix(J.map((row) => free.map((j) => (row[j] ?? 0) / (norms[j] || 1))));
  const svd = new SingularValueDecomposition(scaled, { autoTranspose: true, computeLeftSingularVectors: false });
  const values = svd.diagonal;
  const least = Math.min(...values);
  if (J.length < free.length || !(least > RANK_TOLERANCE * Math.max(...values)))
    throw new OutOfRange('least singular value', least, 'above 0: the data do not separate the unknowns');
  const V = svd.rightSingularVectors;
  free.forEach((j, a) => {
    free.forEach((k, b) => {
      const sum = values.reduce((total, s, i) => total + (V.get(a, i) * V.get(b, i)) / s ** 2, 0);
      const row = inverse[j];
      if (row) row[k] = sum / ((norms[j] || 1) * (norms[k] || 1));
    });
  });
  return inverse;
}

/**
 * Lengths of the columns of a matrix.
 * @param J rows of equal length, any units
 * @returns root of the sum of squares of each column, its unit
 * @source Euclidean norm [memory]
 */
export function columnNorms(J: readonly (readonly number[])[]): number[] {
  const out = new Array<number>(J[0]?.length ?? 0).fill(0);
  for (const row of J)
    row.forEach((value, j) => {
      out[j] = (out[j] ?? 0) + value * value;
    });
  return out.map(Math.sqrt);
}
