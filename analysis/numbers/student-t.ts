/** Student's t with real degrees of freedom: what turns a standard uncertainty into an interval. */
import { OutOfRange } from '../remarks/index.ts';
import { incompleteBeta } from './incomplete-beta.ts';
import { logGamma } from './log-gamma.ts';
import { normalCdf, normalQuantile } from './normal-distribution.ts';

/** From here on the expansion about the normal distribution is exact to 1e-10, where the beta function loses digits. */
const NEAR_NORMAL = 1e5;

/**
 * Share of Student's t distribution below t.
 * @param t argument, pure number
 * @param nu degrees of freedom, above 0, need not be whole, may be infinite
 * @returns 0 to 1
 * @throws OutOfRange when nu is not above 0
 * @source relation to the incomplete beta function [memory]; checked against printed t tables
 */
export function studentTCdf(t: number, nu: number): number {
  if (!(nu > 0)) throw new OutOfRange('degrees of freedom', nu, 'above 0');
  if (nu > NEAR_NORMAL) return normalCdf((t * (1 - 1 / (4 * nu))) / Math.sqrt(1 + (t * t) / (2 * nu)));
  const tail = 0.5 * incompleteBeta(nu / (nu + t * t), nu / 2, 0.5);
  return t > 0 ? 1 - tail : tail;
}

/**
 * The t with the share p below it.
 * @param p share, between 0 and 1, pure number
 * @param nu degrees of freedom, above 0, need not be whole, may be infinite
 * @returns t, pure number
 * @throws OutOfRange when p is not strictly between 0 and 1 or nu is not above 0
 * @source inverse of studentTCdf by bracketed Newton steps; checked against printed t tables [memory]
 */
export function studentTQuantile(p: number, nu: number): number {
  if (!(p > 0 && p < 1)) throw new OutOfRange('p', p, 'between 0 and 1');
  if (!(nu > 0)) throw new OutOfRange('degrees of freedom', nu, 'above 0');
  if (nu > NEAR_NORMAL) {
    const z = normalQuantile(p);
    return z + (z ** 3 + z) / (4 * nu);
  }
  if (p === 0.5) return 0;
  if (p < 0.5) return -studentTQuantile(1 - p, nu);
  let low = 0;
  let high = 1;
  while (studentTCdf(high, nu) < p) {
    low = high;
    high *= 2;
  }
  const scale = Math.exp(logGamma((nu + 1) / 2) - logGamma(nu / 2)) / Math.sqrt(nu * Math.PI);
  let t = (low + high) / 2;
  for (let i = 0; i < 200; i += 1) {
    const over = studentTCdf(t, nu) - p;
    if (over > 0) high = t;
    else low = t;
    const newton = t - over / (scale * (1 + (t * t) / nu) ** (-(nu + 1) / 2));
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    if (Math.abs(next - t) < 1e-13 * (1 + t)) return next;
    t = next;
  }
  return t;
}

/**
 * Coverage factor of a two-sided 95 % interval, t(0.975, nu).
 * @param nu degrees of freedom, above 0, may be infinite
 * @returns factor on the standard uncertainty, pure number; 1.96 for infinite nu, more for few
 * @throws OutOfRange when nu is not above 0
 * @source [jcgm-100] G.3
 */
export function coverageFactor(nu: number): number {
  return studentTQuantile(0.975, nu);
}
