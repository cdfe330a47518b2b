/** Regularised incomplete gamma function: the tail of chi-square. */
import { OutOfRange } from '../remarks/index.ts';
import { logGamma } from './log-gamma.ts';

const TINY = 1e-300;
const ENOUGH = 1e-16;
const MOST_TERMS = 10_000;

/**
 * P(a, x), the share of a gamma distribution of shape a below x.
 * @param a shape, above 0, pure number
 * @param x argument, 0 or more, pure number
 * @returns 0 to 1
 * @throws OutOfRange when a is not above 0 or x is negative
 * @source series below a + 1, continued fraction above, modified Lentz evaluation [memory]
 */
export function incompleteGamma(a: number, x: number): number {
  if (!(a > 0)) throw new OutOfRange('a', a, 'above 0');
  if (!(x >= 0)) throw new OutOfRange('x', x, '0 or more');
  if (x === 0) return 0;
  if (x === Number.POSITIVE_INFINITY) return 1;
  const front = Math.exp(a * Math.log(x) - x - logGamma(a));
  return x < a + 1 ? front * series(a, x) : 1 - front * fraction(a, x);
}

function series(a: number, x: number): number {
  let term = 1 / a;
  let sum = term;
  for (let k = 1; k < MOST_TERMS && term > ENOUGH * sum; k += 1) {
    term *= x / (a + k);
    sum += term;
  }
  return sum;
}

function fraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = 1 / TINY;
  let d = 1 / b;
  let h = d;
  for (let k = 1; k <= MOST_TERMS; k += 1) {
    const numerator = -k * (k - a);
    b += 2;
    d = 1 / away(numerator * d + b);
    c = away(b + numerator / c);
    const step = d * c;
    h *= step;
    if (Math.abs(step - 1) < ENOUGH) break;
  }
  return h;
}

const away = (value: number) => (Math.abs(value) < TINY ? TINY : value);
