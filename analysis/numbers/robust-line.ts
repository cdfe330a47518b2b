/** A line that one bad point cannot turn: median of pair slopes. */
import { OutOfRange } from '../remarks/index.ts';
import { normalQuantile } from './normal-distribution.ts';
import { quantileOfSorted } from './quantile.ts';

export interface RobustLine {
  slope: number;
  intercept: number;
  /** 95 % interval of the slope */
  low: number;
  high: number;
  n: number;
}

/** Pair slopes grow with the square of the points; beyond this many points thin them first. */
const MOST_POINTS = 3000;

/**
 * Theil-Sen line: the median of the slopes of all pairs, and the median of what that slope leaves.
 * @param x abscissae, any one unit; pairs with NaN are left out
 * @param y ordinates, any one unit
 * @returns slope with its 95 % interval, intercept at x = 0
 * @throws OutOfRange with fewer than three points, more than 3000, or all at one x
 * @source Theil 1950, Sen 1968: interval from the variance of Kendall's score, ties in x counted [memory]
 */
export function robustLine(x: ArrayLike<number>, y: ArrayLike<number>): RobustLine {
  const points: { x: number; y: number }[] = [];
  for (let i = 0; i < Math.min(x.length, y.length); i += 1) {
    const [a, b] = [x[i] ?? Number.NaN, y[i] ?? Number.NaN];
    if (Number.isFinite(a) && Number.isFinite(b)) points.push({ x: a, y: b });
  }
  const n = points.length;
  if (n < 3 || n > MOST_POINTS) throw new OutOfRange('points of a line', n, `3 to ${MOST_POINTS}`);
  const slopes: number[] = [];
  points.forEach((one, i) => {
    for (const other of points.slice(i + 1)) if (other.x !== one.x) slopes.push((other.y - one.y) / (other.x - one.x));
  });
  if (slopes.length === 0) throw new OutOfRange('spread of x', 0, 'above 0');
  const sorted = Float64Array.from(slopes).sort();
  const slope = quantileOfSorted(sorted, 0.5);
  const rest = Float64Array.from(points, (one) => one.y - slope * one.x).sort();
  const spread = normalQuantile(0.975) * Math.sqrt(scoreVariance(points));
  const count = sorted.length;
  const lowAt = Math.max(0, Math.round((count - spread) / 2) - 1);
  const highAt = Math.min(count - 1, Math.round((count + spread) / 2));
  return {
    slope,
    intercept: quantileOfSorted(rest, 0.5),
    low: sorted[lowAt] ?? slope,
    high: sorted[highAt] ?? slope,
    n,
  };
}

function scoreVariance(points: readonly { x: number; y: number }[]): number {
  const ties = (values: number[]) => {
    const counts = new Map<number, number>();
    for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
    return [...counts.values()].reduce((sum, t) => sum + t * (t - 1) * (2 * t + 5), 0);
  };
  const n = points.length;
  return (n * (n - 1) * (2 * n + 5) - ties(points.map((p) => p.x)) - ties(points.map((p) => p.y))) / 18;
}
