/** Ceilings: where the best rate, falling in a line with density altitude, comes down to a stated rate. An extrapolation. */
import { leastSquares, ratioInterval, studentTQuantile } from '../../numbers/index.ts';

/** rate that names the service ceiling, m/s: 100 ft/min (from memory) */
export const SERVICE_RATE = 0.508;

export interface CeilingPoint {
  Hd: number;
  rate: number;
  /** standard uncertainty of the rate, m/s, and its degrees of freedom */
  u: number;
  nu: number;
}

export interface Ceiling {
  value: number | null;
  low: number | null;
  high: number | null;
  why: string;
}

/**
 * Density altitude at which the best rate has fallen to a rate.
 * @param points best rate of each band, at least two
 * @param rate the rate that names the ceiling, m/s
 * @returns density altitude with its interval, or why there is none
 * @source straight line of rate against density altitude; Fieller's interval; refused beyond twice the flown span
 */
export function ceilingAt(points: readonly CeilingPoint[], rate: number): Ceiling {
  const none = (why: string): Ceiling => ({ value: null, low: null, high: null, why });
  if (points.length < 2) return none('one density-altitude band shows no fall of rate with height');
  const heights = points.map((point) => point.Hd);
  const [bottom, top] = [Math.min(...heights), Math.max(...heights)];
  const middle = heights.reduce((sum, Hd) => sum + Hd / heights.length, 0);
  const fit = leastSquares({
    residuals: ([a = 0, b = 0]) => points.map((point) => (a + (b * (point.Hd - middle)) / 1000 - point.rate) / point.u),
    start: [points[0]?.rate ?? 0, 0],
    scale: [1, 1],
  });
  const [a = 0, b = 0] = fit.parameters;
  const [aa = 0, ab = 0] = fit.inverse[0] ?? [];
  const bb = fit.inverse[1]?.[1] ?? 0;
  const nu = points.reduce((sum, point) => sum + point.nu, 0);
  if (!(b < 0) || Math.abs(b) / Math.sqrt(bb) < studentTQuantile(0.975, nu)) {
    return none('the fall of rate with height is not told from its scatter');
  }
  // a + b x = rate, x in km above the middle: x = -(a - rate)/b
  const { ratio, low, high } = ratioInterval(a - rate, -b, { aa, ab: -ab, bb }, nu);
  const at = (x: number | null) => (x === null ? null : middle + 1000 * x);
  const value = middle + 1000 * ratio;
  if (value > top + 2 * (top - bottom)) {
    return none('it lies further above the highest band than twice the height between the bands');
  }
  return { value, low: at(low), high: at(high), why: '' };
}
