/** What the trace cannot show: block, oil and duct that take their heat more slowly than the coolant. */
import { slowPartAllowance } from '../../models/index.ts';
import { toSi } from '../../units/index.ts';
import type { TestPoint } from './points.ts';
import { meanOf } from './settings.ts';
import type { HotTrace, Trace } from './trace.ts';

/** Steady for so long at under such a rate shows the slow part. */
const STEADY_SECONDS = 300;
const STEADY_RATE = toSi(0.2, 'K/min');

/**
 * Slope of a temperature over some samples.
 * @param values on the grid, K, NaN where missing
 * @param from first sample
 * @param to last sample
 * @param dt spacing, s
 * @returns K/s; NaN below three readings
 */
export function slopeOf(values: Float64Array, from: number, to: number, dt: number): number {
  const middle = (from + to) / 2;
  const mean = meanOf(values, from, to) ?? Number.NaN;
  let [sxx, sxy, n] = [0, 0, 0];
  for (let i = from; i <= to; i += 1) {
    const value = values[i] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    const x = (i - middle) * dt;
    sxx += x * x;
    sxy += x * (value - mean);
    n += 1;
  }
  return n >= 3 && sxx > 0 ? sxy / sxx : Number.NaN;
}

/**
 * Whether a temperature stood still to the end of a point.
 * @param trace the run, object
 * @param values on the grid, K
 * @param point the point, object
 * @returns true when the last five minutes changed by less than 0.2 K a minute; false where shorter or not read
 */
export function stoodStill(trace: Trace, values: Float64Array, point: TestPoint): boolean {
  const { dt } = trace.grid;
  const from = point.to - Math.floor(STEADY_SECONDS / dt);
  return from >= point.from && Math.abs(slopeOf(values, from, point.to, dt)) < STEADY_RATE;
}

/**
 * Allowance for the slow part.
 * @param trace the run, object
 * @param hot the temperature the point is about, object
 * @param point the point, object
 * @param rise of the temperature inside the point, K
 * @returns K to add to the hot end; 0 when oil and the temperature itself both stood still
 */
export function slowNodeAllowance(trace: Trace, hot: HotTrace, point: TestPoint, rise: number): number {
  const other = hot === trace.oil ? trace.main[0] : trace.oil;
  if (other && stoodStill(trace, hot.values, point) && stoodStill(trace, other.values, point)) return 0;
  return slowPartAllowance(rise);
}
