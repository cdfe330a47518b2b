/** Interval of a ratio of two uncertain numbers, which may honestly be unbounded. */
import { coverageFactor } from './student-t.ts';

export interface RatioInterval {
  ratio: number;
  /** 95 % ends; null on both where the denominator is not told from zero, and the ratio is then not determined */
  low: number | null;
  high: number | null;
}

/**
 * Fieller's 95 % interval of numerator / denominator.
 * @param numerator estimate a, any unit
 * @param denominator estimate b, any unit
 * @param covariance variances of both and their covariance, in those units
 * @param nu degrees of freedom behind the covariance, above 0, may be infinite
 * @returns ratio and ends; ends null when unbounded
 * @source Fieller 1954: the set of r with (a - r b)^2 <= t^2 (v_aa - 2 r v_ab + r^2 v_bb) [memory]
 */
export function ratioInterval(
  numerator: number,
  denominator: number,
  covariance: { aa: number; ab: number; bb: number },
  nu: number,
): RatioInterval {
  const t2 = coverageFactor(nu) ** 2;
  const { aa, ab, bb } = covariance;
  const ratio = numerator / denominator;
  // A r^2 - 2 B r + C <= 0
  const A = denominator ** 2 - t2 * bb;
  const B = numerator * denominator - t2 * ab;
  const C = numerator ** 2 - t2 * aa;
  const inside = B * B - A * C;
  if (!(A > 0) || inside < 0) return { ratio, low: null, high: null };
  const root = Math.sqrt(inside);
  return { ratio, low: (B - root) / A, high: (B + root) / A };
}
