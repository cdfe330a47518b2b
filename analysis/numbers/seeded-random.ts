/** Seeded random numbers: the same seed gives the same draws on every machine. */
import { lowerCholesky } from './cholesky.ts';

export interface Random {
  /** uniform, 0 inclusive to 1 exclusive, 53 bits */
  uniform(): number;
  /** standard normal */
  normal(): number;
  /** Student's t with nu degrees of freedom (real; Infinity gives normal) */
  student(nu: number): number;
  /** chi-square divided by its degrees of freedom */
  chiSquareOver(nu: number): number;
  /** whole number, 0 inclusive to below exclusive */
  whole(below: number): number;
}

/**
 * A generator from a seed (sfc32: 128 bits of state, passes the usual batteries).
 * @param seed whole number or any text, such as the hash of a file
 * @returns the generator; draws follow in a fixed order
 * @source sfc32 by its published recurrence [memory]; polar method for normals, Marsaglia and Tsang for gamma [memory]
 */
export function seededRandom(seed: number | string): Random {
  const bits = sfc32(String(seed));
  const uniform = () => ((bits() >>> 5) * 0x4000000 + (bits() >>> 6)) / 0x20000000000000;
  let spare: number | null = null;
  const normal = (): number => {
    if (spare !== null) {
      const kept = spare;
      spare = null;
      return kept;
    }
    for (;;) {
      const a = 2 * uniform() - 1;
      const b = 2 * uniform() - 1;
      const r2 = a * a + b * b;
      if (r2 >= 1 || r2 === 0) continue;
      const scale = Math.sqrt((-2 * Math.log(r2)) / r2);
      spare = b * scale;
      return a * scale;
    }
  };
  const gamma = (shape: number): number => {
    if (shape < 1) return gamma(shape + 1) * (1 - uniform()) ** (1 / shape);
    const d = shape - 1 / 3;
    const c = 1 / Math.sqrt(9 * d);
    for (;;) {
      const x = normal();
      const v = (1 + c * x) ** 3;
      if (v > 0 && Math.log(1 - uniform()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v;
    }
  };
  const chiSquareOver = (nu: number) => (Number.isFinite(nu) ? (2 * gamma(nu / 2)) / nu : 1);
  return {
    uniform,
    normal,
    chiSquareOver,
    student: (nu) => normal() / Math.sqrt(chiSquareOver(nu)),
    whole: (below) => Math.floor(uniform() * below),
  };
}

/**
 * Draws from a multivariate t: the law of fitted parameters whose covariance was itself estimated.
 * @param random the generator, object
 * @param centre fitted parameters, any units
 * @param covariance their covariance, square list of rows, products of those units
 * @param nu degrees of freedom of the covariance, above 0, may be infinite
 * @returns a function that gives one draw a call, in the units of centre
 * @throws OutOfRange when the covariance is not positive semi-definite
 * @source [jcgm-101] 6.4.9 for t; common denominator for all parameters [memory]
 */
export function multivariateT(
  random: Random,
  centre: readonly number[],
  covariance: readonly (readonly number[])[],
  nu: number,
): () => number[] {
  const L = lowerCholesky(covariance);
  return () => {
    const z = centre.map(() => random.normal());
    const stretch = 1 / Math.sqrt(random.chiSquareOver(nu));
    return centre.map((mean, i) => mean + stretch * (L[i] ?? []).reduce((sum, l, j) => sum + l * (z[j] ?? 0), 0));
  };
}

function sfc32(seed: string): () => number {
  // Four words of state by a multiplicative hash of the text, then twenty rounds to mix.
  let h = 1779033703 ^ seed.length;
  const word = () => {
    for (let i = 0; i < seed.length; i += 1) {
      h = Math.imul(h ^ seed.charCodeAt(i), 3432918353);
      h = (h << 13) | (h >>> 19);
    }
    h = Math.imul(h ^ (h >>> 16), 2246822507);
    h = Math.imul(h ^ (h >>> 13), 3266489909);
    h ^= h >>> 16;
    return h >>> 0;
  };
  let a = word();
  let b = word();
  let c = word();
  let counter = 1;
  const next = () => {
    const sum = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (c << 21) | (c >>> 11);
    c = (c + sum) | 0;
    return sum >>> 0;
  };
  for (let i = 0; i < 20; i += 1) next();
  return next;
}
