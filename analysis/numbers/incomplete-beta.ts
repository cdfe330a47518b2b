/** Regularised incomplete beta function: the tail of Student's t and of F. */
import { OutOfRange } from '../remarks/index.ts';
import { logGamma } from './log-gamma.ts';

const TINY = 1e-300;
const ENOUGH = 1e-15;
const MOST_TERMS = 10_000;

/**
 * I_x(a, b), by its continued fraction on the side where that converges.
 * @param x 0 to 1, pure number
 * @param a first shape, above 0, pure number
 * @param b second shape, above 0, pure number
 * @returns the share of a beta(a, b) distribution below x, 0 to 1
 * @throws OutOfRange when x is outside 0 to 1 or a shape is not positive
 * @source continued fraction of the incomplete beta function, modified Lentz evaluation [memory]
 */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (!(x >= 0 && x <= 1)) throw new OutOfRange('x', x, '0 to 1');
  if (!(a > 0)) throw new OutOfRange('a', a, 'above 0');
  if (!(b > 0)) throw new OutOfRange('b', b, 'above 0');
  if (x === 0 || x === 1) return x;
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
  return x < (a + 1) / (a + b + 2) ? (front * fraction(x, a, b)) / a : 1 - (front * fraction(1 - x, b, a)) / b;
}

function fraction(x: number, a: number, b: number): number {
  let c = 1;
  let d = away(1 - ((a + b) * x) / (a + 1));
  d = 1 / d;
  let h = d;
  for (let m = 1; m <= MOST_TERMS; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / away(1 + even * d);
    c = away(1 + even / c);
    h *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / away(1 + odd * d);
    c = away(1 + odd / c);
    const step = d * c;
    h *= step;
    if (Math.abs(step - 1) < ENOUGH) break;
  }
  return h;
}

const away = (value: number) => (Math.abs(value) < TINY ? TINY : value);
