/** One altitude against another, and a vertical speed against the change of an altitude. */
import { median } from '../../numbers/index.ts';
import { toSi } from '../../units/index.ts';
import { type ScaledColumn, type ScaleEvidence, someRows } from './scale-evidence.ts';

const LEAST_RISE = 60;
const HEIGHT_TOLERANCE = 0.2;
const RATE_TOLERANCE = 0.35;
const RATE_SECONDS = 10;

/**
 * What one altitude says about the unit of another: how much the one changes while the other does.
 * @param height the column in question, values as written
 * @param reference an altitude whose unit is taken as known
 * @returns evidence, or null where the airplane stayed at one height
 */
export function heightFromHeight(height: ScaledColumn, reference: ScaledColumn): ScaleEvidence | null {
  const { unit } = reference;
  if (unit === null) return null;
  const xs: number[] = [];
  const ys: number[] = [];
  for (const row of someRows(height.numbers.length)) {
    const [y, x] = [height.numbers[row] ?? Number.NaN, toSi(reference.numbers[row] ?? Number.NaN, unit)];
    if (!Number.isFinite(y) || !Number.isFinite(x)) continue;
    xs.push(x);
    ys.push(y);
  }
  if (xs.length < 20) return null;
  // Middles of the lowest and the highest tenth: robust against a spike, blind to which came first.
  const sorted = Float64Array.from(xs).sort();
  const lowest = sorted[Math.floor(0.1 * sorted.length)] ?? 0;
  const highest = sorted[Math.ceil(0.9 * sorted.length) - 1] ?? 0;
  const middle = (isIn: (x: number) => boolean) => ({
    x: median(xs.filter(isIn)),
    y: median(ys.filter((_, i) => isIn(xs[i] ?? Number.NaN))),
  });
  const low = middle((x) => x <= lowest);
  const high = middle((x) => x >= highest);
  if (!(high.x - low.x > LEAST_RISE) || !(Math.abs(high.y - low.y) > 0)) return null;
  return {
    place: height.place,
    factor: (high.x - low.x) / (high.y - low.y),
    tolerance: HEIGHT_TOLERANCE,
    by: `the change of "${reference.column}"`,
  };
}

/**
 * What the change of an altitude says about the unit of a vertical speed.
 * @param rate the vertical speed, values as written
 * @param height an altitude whose unit is taken as known
 * @param t seconds of the rows, s
 * @returns evidence, or null where the airplane neither climbed nor sank
 */
export function rateFromHeight(rate: ScaledColumn, height: ScaledColumn, t: Float64Array): ScaleEvidence | null {
  const { unit } = height;
  if (unit === null) return null;
  let sumXY = 0;
  let sumYY = 0;
  let count = 0;
  let from = 0;
  let within: number[] = [];
  for (const row of someRows(t.length)) {
    const written = rate.numbers[row] ?? Number.NaN;
    if (Number.isFinite(written)) within.push(written);
    const seconds = (t[row] ?? 0) - (t[from] ?? 0);
    if (seconds < RATE_SECONDS) continue;
    const climbed = toSi(height.numbers[row] ?? Number.NaN, unit) - toSi(height.numbers[from] ?? Number.NaN, unit);
    if (Number.isFinite(climbed) && within.length > 0 && seconds < 3 * RATE_SECONDS) {
      const mean = within.reduce((sum, one) => sum + one, 0) / within.length;
      sumXY += (climbed / seconds) * mean;
      sumYY += mean * mean;
      if (Math.abs(climbed / seconds) > 1) count += 1;
    }
    from = row;
    within = [];
  }
  if (count < 5 || sumYY === 0) return null;
  return {
    place: rate.place,
    factor: sumXY / sumYY,
    tolerance: RATE_TOLERANCE,
    by: `the change of "${height.column}"`,
  };
}
