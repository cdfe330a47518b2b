/** Chi-square: is the scatter between runs what the scatter within them explains? */
import { OutOfRange } from '../remarks/index.ts';
import { incompleteGamma } from './incomplete-gamma.ts';

/**
 * Share of the chi-square distribution below x.
 * @param x argument, 0 or more, pure number
 * @param nu degrees of freedom, above 0, pure number
 * @returns 0 to 1
 * @throws OutOfRange when nu is not above 0 or x is negative
 * @source relation to the incomplete gamma function [memory]; checked against printed tables
 */
export function chiSquareCdf(x: number, nu: number): number {
  if (!(nu > 0)) throw new OutOfRange('degrees of freedom', nu, 'above 0');
  return incompleteGamma(nu / 2, x / 2);
}

/**
 * The x with the share p of chi-square below it.
 * @param p share, between 0 and 1, pure number
 * @param nu degrees of freedom, above 0, pure number
 * @returns x, pure number
 * @throws OutOfRange when p is not strictly between 0 and 1 or nu is not above 0
 * @source inverse of chiSquareCdf by bisection [memory]; checked against printed tables
 */
export function chiSquareQuantile(p: number, nu: number): number {
  if (!(p > 0 && p < 1)) throw new OutOfRange('p', p, 'between 0 and 1');
  if (!(nu > 0)) throw new OutOfRange('degrees of freedom', nu, 'above 0');
  let low = 0;
  let high = nu + 10;
  while (chiSquareCdf(high, nu) < p) high *= 2;
  for (let i = 0; i < 200 && high - low > 1e-13 * (1 + high); i += 1) {
    const middle = (low + high) / 2;
    if (chiSquareCdf(middle, nu) < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
