/** The standard normal distribution and its inverse. */
import { OutOfRange } from '../remarks/index.ts';

/**
 * Share of the standard normal distribution below z.
 * @param z standard deviations from the mean, pure number
 * @returns 0 to 1, absolute error under 1e-15
 * @source series and continued fraction of the error function [memory], checked against printed tables
 */
export function normalCdf(z: number): number {
  if (Number.isNaN(z)) return Number.NaN;
  const tail = upperTail(Math.abs(z));
  return z > 0 ? 1 - tail : tail;
}

function upperTail(z: number): number {
  const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
  if (density === 0) return 0;
  if (z < 3) {
    // 0.5 - density * (z + z^3/3 + z^5/(3*5) + ...)
    let term = z;
    let sum = z;
    for (let k = 3; Math.abs(term) > 1e-17 * Math.abs(sum); k += 2) {
      term *= (z * z) / k;
      sum += term;
    }
    return 0.5 - density * sum;
  }
  // density / (z + 1/(z + 2/(z + ...)))
  let below = z;
  for (let k = 80; k >= 1; k -= 1) below = z + k / below;
  return density / below;
}

/**
 * The z with the share p below it.
 * @param p share, between 0 and 1, pure number
 * @returns standard deviations from the mean, pure number
 * @throws OutOfRange when p is not strictly between 0 and 1
 * @source Newton steps on the distribution from a logistic start; no published approximation is used [memory]
 */
export function normalQuantile(p: number): number {
  if (!(p > 0 && p < 1)) throw new OutOfRange('p', p, 'between 0 and 1');
  if (p === 0.5) return 0;
  if (p > 0.5) return -normalQuantile(1 - p);
  // Far tail: ln tail ~ -z^2/2; Newton on ln(tail) converges from either side because it is concave.
  let z = -Math.sqrt(Math.max(0, -2 * Math.log(2 * p)));
  for (let i = 0; i < 60; i += 1) {
    const tail = upperTail(-z);
    const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
    const step = (Math.log(tail / p) * tail) / density;
    z -= step;
    if (Math.abs(step) < 1e-14 * (1 + Math.abs(z))) break;
  }
  return z;
}
