/** Rate of climb as a curve of true airspeed: its two forms, its value and its half-width. */
import { coverageFactor } from '../../numbers/index.ts';

export type Form = 'quadratic' | 'constant-power';

/** A fitted curve: three parameters with their covariance and its degrees of freedom. */
export interface RateCurve {
  form: Form;
  parameters: number[];
  covariance: number[][];
  nu: number;
}

/** speeds are divided by this so that the unknowns are of like size */
export const SCALE = 40;

/**
 * Rate of a fitted curve at a speed.
 * @param form which form, text
 * @param q its three parameters
 * @param V true airspeed, m/s
 * @returns rate of climb, m/s
 */
export function curveRate(form: Form, q: readonly number[], V: number): number {
  const [a = 0, b = 0, c = 0] = q;
  const x = V / SCALE;
  return form === 'quadratic' ? a + b * x + c * x * x : a - b * x ** 3 - c / x;
}

/**
 * Change of the rate with each parameter; both forms are linear in theirs.
 * @param form which form, text
 * @param V true airspeed, m/s
 * @returns three derivatives
 */
export function curveRow(form: Form, V: number): number[] {
  const x = V / SCALE;
  return form === 'quadratic' ? [1, x, x * x] : [1, -(x ** 3), -1 / x];
}

/**
 * Half-width of a curve at a speed, for the next run when `next` is set.
 * @param optimum the band's fit
 * @param V true airspeed, m/s
 * @param next true for a prediction interval, boolean
 * @returns U95, m/s
 */
export function curveHalfWidth(
  optimum: { curve: RateCurve; scatter: { s: number } },
  V: number,
  next: boolean,
): number {
  const row = curveRow(optimum.curve.form, V);
  const C = optimum.curve.covariance;
  let variance = next ? optimum.scatter.s ** 2 : 0;
  row.forEach((a, i) => {
    row.forEach((b, j) => {
      variance += a * b * (C[i]?.[j] ?? 0);
    });
  });
  return coverageFactor(optimum.curve.nu) * Math.sqrt(variance);
}
