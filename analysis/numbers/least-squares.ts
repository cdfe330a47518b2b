/**
 * Non-linear least squares by Levenberg and Marquardt, with the covariance that the answer needs.
 *
 * Steps are solved by orthogonal triangles (QR) of the scaled, damped Jacobian, never by the normal equations; the
 * covariance comes from its singular values, which also tell when the data do not separate the unknowns.
 */
import { Matrix, QrDecomposition } from 'ml-matrix';
import { OutOfRange } from '../remarks/index.ts';
import { columnNorms, inverseOfProduct } from './inverse-of-product.ts';

export interface LeastSquaresProblem {
  /** residuals at the parameters, each already divided by its standard deviation where weights differ */
  residuals(parameters: readonly number[]): ArrayLike<number>;
  /** derivatives, one row a residual; by central differences when left out */
  jacobian?(parameters: readonly number[]): number[][];
  start: readonly number[];
  /** bounds, one a parameter; -Infinity or Infinity for none */
  lower?: readonly number[];
  upper?: readonly number[];
  /** size of a change that matters, one a parameter, for differences; |start| or 1 when left out */
  scale?: readonly number[];
  mostIterations?: number;
}

export interface LeastSquaresFit {
  parameters: number[];
  residuals: Float64Array;
  jacobian: number[][];
  rss: number;
  /** residuals less free parameters */
  nu: number;
  /** (J'J)^-1; times s^2 it is the covariance. Zero rows for parameters held at a bound */
  inverse: number[][];
  /** true for a parameter that ended on its bound: its error is not the covariance's */
  atBound: boolean[];
  iterations: number;
  converged: boolean;
}

const DEFAULT_ITERATIONS = 200;
/** A cautious first step; where the model is nearly linear the damping is gone in a few. */
const FIRST_DAMPING = 0.1;
/** Relative fall of the sum of squares, and relative step, that count as standing still. */
const STILL = 1e-14;

/**
 * Fit parameters by least squares.
 * @param problem residuals, start and what else is known, object
 * @returns parameters with (J'J)^-1, residuals and how the search ended, in the problem's own units
 * @throws OutOfRange when there are fewer residuals than free parameters, a residual is not a number at the start, or the data do not separate the unknowns
 * @source Marquardt 1963 with the scaling of More 1978 and the damping of Nielsen 1999 [memory]; certified values of reference data sets in tests/outside
 */
export function leastSquares(problem: LeastSquaresProblem): LeastSquaresFit {
  const p = problem.start.length;
  const clip = (x: number, j: number) =>
    Math.min(
      problem.upper?.[j] ?? Number.POSITIVE_INFINITY,
      Math.max(problem.lower?.[j] ?? Number.NEGATIVE_INFINITY, x),
    );
  let x = problem.start.map(clip);
  let r = Float64Array.from(problem.residuals(x));
  let rss = sumOfSquares(r);
  if (!Number.isFinite(rss)) throw new OutOfRange('residuals at the start', rss, 'numbers');
  if (r.length < p) throw new OutOfRange('residuals', r.length, `${p} or more, one a parameter`);
  const size = x.map((value, j) => problem.scale?.[j] ?? (Math.abs(value) || 1));
  const jacobianAt = (at: readonly number[]) => problem.jacobian?.(at) ?? differences(problem, at, size, r.length);
  let J = jacobianAt(x);
  const reach = new Array<number>(p).fill(0);
  let damping = FIRST_DAMPING;
  let growth = 2;
  let converged = false;
  let iterations = 0;
  const most = problem.mostIterations ?? DEFAULT_ITERATIONS;
  while (iterations < most && !converged) {
    iterations += 1;
    const gradient = columnsTimes(J, r);
    const held = x.map((value, j) => blocked(value, gradient[j] ?? 0, problem.lower?.[j], problem.upper?.[j]));
    columnNorms(J).forEach((norm, j) => {
      reach[j] = Math.max(reach[j] ?? 0, norm || 1e-12);
    });
    const step = boundedStep(J, r, reach, damping, held, (j, d) => clip((x[j] ?? 0) + d, j) - (x[j] ?? 0));
    const next = x.map((value, j) => clip(value + (step[j] ?? 0), j));
    const moved = next.map((value, j) => value - (x[j] ?? 0));
    const rNext = Float64Array.from(problem.residuals(next));
    const rssNext = sumOfSquares(rNext);
    const promised = rss - sumOfSquares(linearised(J, r, moved));
    const still = moved.every((d, j) => Math.abs(d) <= STILL * (Math.abs(x[j] ?? 0) + (size[j] ?? 1)));
    if (rssNext < rss) {
      const gain = (rss - rssNext) / Math.max(promised, Number.MIN_VALUE);
      converged = still || (rss - rssNext <= STILL * rss && promised <= STILL * rss);
      x = next;
      r = rNext;
      rss = rssNext;
      J = jacobianAt(x);
      damping *= Math.max(1 / 10, 1 - (2 * gain - 1) ** 3);
      growth = 2;
    } else {
      converged = still || promised <= STILL * rss || rss === 0;
      damping *= growth;
      growth *= 2;
    }
  }
  const atBound = x.map((value, j) => value === problem.lower?.[j] || value === problem.upper?.[j]);
  const free = atBound.filter((bound) => !bound).length;
  return {
    parameters: x,
    residuals: r,
    jacobian: J,
    rss,
    nu: r.length - free,
    inverse: inverseOfProduct(J, atBound),
    atBound,
    iterations,
    converged,
  };
}

// A parameter whose step would leave its bounds goes to the bound, and the others are solved again with it there.
function boundedStep(
  J: readonly (readonly number[])[],
  r: Float64Array,
  reach: readonly number[],
  damping: number,
  held: readonly boolean[],
  allowed: (j: number, step: number) => number,
): number[] {
  const fixed: (number | null)[] = held.map((isHeld) => (isHeld ? 0 : null));
  for (;;) {
    const step = dampedStep(J, r, reach, damping, fixed);
    const outside = step.flatMap((d, j) => (fixed[j] === null && allowed(j, d) !== d ? [j] : []));
    if (outside.length === 0) return step;
    for (const j of outside) fixed[j] = allowed(j, step[j] ?? 0);
  }
}

function dampedStep(
  J: readonly (readonly number[])[],
  r: Float64Array,
  reach: readonly number[],
  damping: number,
  fixed: readonly (number | null)[],
): number[] {
  const free = fixed.flatMap((given, j) => (given === null ? [j] : []));
  const step = fixed.map((given) => given ?? 0);
  if (free.length === 0) return step;
  const rows = J.map((row) => free.map((j) => (row[j] ?? 0) / (reach[j] ?? 1)));
  free.forEach((_, a) => {
    rows.push(free.map((__, b) => (a === b ? Math.sqrt(damping) : 0)));
  });
  const right = [...Array.from(linearised(J, r, step), (value) => [-value]), ...free.map(() => [0])];
  const solved = new QrDecomposition(new Matrix(rows)).solve(new Matrix(right));
  free.forEach((j, a) => {
    step[j] = solved.get(a, 0) / (reach[j] ?? 1);
  });
  return step;
}

function differences(
  problem: LeastSquaresProblem,
  x: readonly number[],
  size: readonly number[],
  n: number,
): number[][] {
  const J = Array.from({ length: n }, () => new Array<number>(x.length).fill(0));
  x.forEach((value, j) => {
    const h = Math.cbrt(Number.EPSILON) * Math.max(Math.abs(value), size[j] ?? 1);
    // One-sided where a bound is nearer than the step.
    const up = Math.min(value + h, problem.upper?.[j] ?? Number.POSITIVE_INFINITY);
    const down = Math.max(value - h, problem.lower?.[j] ?? Number.NEGATIVE_INFINITY);
    const above = problem.residuals(x.map((one, k) => (k === j ? up : one)));
    const below = problem.residuals(x.map((one, k) => (k === j ? down : one)));
    for (let i = 0; i < n; i += 1) {
      const row = J[i];
      if (row) row[j] = ((above[i] ?? 0) - (below[i] ?? 0)) / (up - down);
    }
  });
  return J;
}

function blocked(value: number, gradient: number, lower?: number, upper?: number): boolean {
  return (value === lower && gradient > 0) || (value === upper && gradient < 0);
}

function columnsTimes(J: readonly (readonly number[])[], r: Float64Array): number[] {
  const out = new Array<number>(J[0]?.length ?? 0).fill(0);
  J.forEach((row, i) => {
    row.forEach((value, j) => {
      out[j] = (out[j] ?? 0) + value * (r[i] ?? 0);
    });
  });
  return out;
}

function linearised(J: readonly (readonly number[])[], r: Float64Array, step: readonly number[]): Float64Array {
  return r.map((value, i) => (J[i] ?? []).reduce((sum, d, j) => sum + d * (step[j] ?? 0), value));
}

function sumOfSquares(r: Float64Array): number {
  return r.reduce((sum, value) => sum + value * value, 0);
}
