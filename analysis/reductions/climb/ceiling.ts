/** Ceilings: where the best rate, falling in a line with density altitude, comes down to a stated rate. An extrapolation. */
import { densityRatio, H_TROPOPAUSE, heightOfDensityRatio, pressureAt, standardTemperature } from '../../air/index.ts';
import { leastSquares, ratioInterval, studentTQuantile } from '../../numbers/index.ts';

/** rate that names the service ceiling, m/s: 100 ft/min (from memory) */
export const SERVICE_RATE = 0.508;

export interface CeilingPoint {
  Hd: number;
  rate: number;
  /** standard uncertainty of the rate, m/s, and its degrees of freedom */
  u: number;
  nu: number;
  /** scatter of one climb, m/s: a ceiling is where the next climb would end */
  s: number;
}

export interface Ceiling {
  value: number | null;
  low: number | null;
  high: number | null;
  /** half-width from the choice of line, m */
  fit: number;
  why: string;
}

/**
 * Density altitude at which the best rate has fallen to a rate.
 * @param points best rate of each band, at least two
 * @param rate the rate that names the ceiling, m/s
 * @returns density altitude with its interval for the next climb, or why there is none
 * @source line of rate against density altitude; Fieller's interval [memory]; refused beyond twice the flown span
 */
export function ceilingAt(points: readonly CeilingPoint[], rate: number): Ceiling {
  const none = (why: string): Ceiling => ({ value: null, low: null, high: null, fit: 0, why });
  if (points.length < 2) return none('one density-altitude band shows no fall of rate with height');
  const heights = points.map((point) => point.Hd);
  const [bottom, top] = [Math.min(...heights), Math.max(...heights)];
  const line = lineThrough(points, (Hd) => Hd / 1000);
  const nu = points.reduce((sum, point) => sum + point.nu, 0);
  if (!(line.b < 0) || Math.abs(line.b) / Math.sqrt(line.bb) < studentTQuantile(0.975, nu)) {
    return none('the fall of rate with height is not told from its scatter');
  }
  const next = points.reduce((sum, point) => sum + point.s ** 2 / points.length, 0);
  // a + b (x - middle) = rate, x in km: x - middle = -(a - rate)/b
  const { a, b, aa, ab, bb, middle } = line;
  const { ratio, low, high } = ratioInterval(a - rate, -b, { aa: aa + next, ab: -ab, bb }, nu);
  const value = 1000 * (middle + ratio);
  if (value > top + 2 * (top - bottom)) {
    return none('it lies further above the highest band than twice the height between the bands');
  }
  const other = byDensity(points, rate);
  if (other === null) return none('against density the rate does not fall to it below the tropopause');
  const fit = Math.abs(value - other) / Math.sqrt(3);
  const end = (x: number | null) => (x === null ? null : widened(value, 1000 * (middle + x), fit));
  return { value, low: end(low), high: end(high), fit, why: '' };
}

const widened = (value: number, end: number, fit: number) =>
  value + Math.sign(end - value) * Math.hypot(end - value, fit);

// The rate does not fall in a straight line: against height it flattens towards the ceiling, against density it steepens.
// The two lines enclose it; half their distance is the most the one quoted may be wrong by, rectangular.
function byDensity(points: readonly CeilingPoint[], rate: number): number | null {
  const { a, b, middle } = lineThrough(points, (Hd) => standardDensityRatio(Hd));
  const sigma = middle + (rate - a) / b;
  return sigma >= standardDensityRatio(H_TROPOPAUSE) ? heightOfDensityRatio(sigma) : null;
}

const standardDensityRatio = (Hd: number) => densityRatio(pressureAt(Hd), standardTemperature(Hd));

// Weighted line of rate on some measure of height, about the measure's mean.
function lineThrough(points: readonly CeilingPoint[], of: (Hd: number) => number) {
  const middle = points.reduce((sum, point) => sum + of(point.Hd) / points.length, 0);
  const fit = leastSquares({
    residuals: ([a = 0, b = 0]) => points.map((point) => (a + b * (of(point.Hd) - middle) - point.rate) / point.u),
    start: [points[0]?.rate ?? 0, 0],
    scale: [1, 1],
  });
  const [a = 0, b = 0] = fit.parameters;
  const [aa = 0, ab = 0] = fit.inverse[0] ?? [];
  return { a, b, aa, ab, bb: fit.inverse[1]?.[1] ?? 0, middle };
}
