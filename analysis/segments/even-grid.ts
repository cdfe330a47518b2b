/** Channels of different rates on one even grid. Nothing is interpolated: a sample is the mean of its own readings. */
import type { Series } from '../logs/index.ts';

export interface Grid {
  /** recording time of the first sample, s */
  start: number;
  /** spacing, s */
  dt: number;
  n: number;
}

/** Finer than this says nothing more about a temperature, s. */
const FINEST = 1;
/** A day and more of recording is looked at more coarsely: no ground run lasts so long. */
const MOST = 100_000;

/**
 * A grid over a channel: its own median spacing, one second at the finest.
 * @param times of the channel's readings, rising, s
 * @returns the grid
 */
export function gridOver(times: Float64Array): Grid {
  const start = times[0] ?? 0;
  const end = times[times.length - 1] ?? start;
  const steps = times.slice(1).map((t, i) => t - (times[i] ?? t));
  const middle = steps.toSorted()[Math.floor(steps.length / 2)] ?? FINEST;
  const dt = Math.max(FINEST, middle, (end - start) / MOST);
  return { start, dt, n: Math.floor((end - start) / dt + 1e-6) + 1 };
}

/**
 * Readings on the grid: the mean of those nearest to each sample, NaN where there are none.
 * @param series a channel, object
 * @param grid the grid, object
 * @param taken whether a reading may be used, function of value and recording time
 * @returns one value a sample
 */
export function onGrid(
  series: Series,
  grid: Grid,
  taken: (value: number, t: number) => boolean = () => true,
): Float64Array {
  const sum = new Float64Array(grid.n);
  const count = new Float64Array(grid.n);
  for (let i = 0; i < series.t.length; i += 1) {
    const t = series.t[i] ?? Number.NaN;
    const value = series.v[i] ?? Number.NaN;
    const k = Math.round((t - grid.start) / grid.dt);
    if (Number.isNaN(value) || !(k >= 0 && k < grid.n) || !taken(value, t)) continue;
    sum[k] = (sum[k] ?? 0) + value;
    count[k] = (count[k] ?? 0) + 1;
  }
  return sum.map((value, k) => ((count[k] ?? 0) > 0 ? value / (count[k] ?? 1) : Number.NaN));
}

/**
 * A slower channel held: its last value stands for as long as it may be taken as held.
 * @param values on the grid, NaN where missing
 * @param grid the grid, object
 * @param seconds longest time a value is held, s
 * @returns values with short gaps filled
 */
export function heldOnGrid(values: Float64Array, grid: Grid, seconds: number): Float64Array {
  const most = Math.ceil(seconds / grid.dt);
  let last = Number.NaN;
  let age = 0;
  return values.map((value) => {
    if (!Number.isNaN(value)) {
      last = value;
      age = 0;
      return value;
    }
    age += 1;
    return age <= most ? last : Number.NaN;
  });
}

/**
 * Every gap filled with the nearest reading: for the slow course of the air.
 * @param values NaN where missing
 * @returns values without gaps, or null where there is no reading at all
 */
export function filledWithNearest(values: Float64Array): Float64Array | null {
  const out = values.slice();
  let last = -1;
  for (let i = 0; i < out.length; i += 1) {
    if (Number.isNaN(values[i] ?? Number.NaN)) continue;
    const before = last < 0 ? 0 : Math.floor((last + i) / 2) + 1;
    out.fill(values[i] ?? 0, before, i);
    if (last >= 0) out.fill(values[last] ?? 0, last + 1, Math.min(before, i));
    last = i;
  }
  if (last < 0) return null;
  return out.fill(values[last] ?? 0, last + 1);
}

/**
 * Moving mean without phase shift: the window shrinks evenly towards the ends, missing samples are passed over.
 * @param values on the grid, NaN where missing
 * @param width full width, samples
 * @returns smoothed values; NaN only where a whole window is missing
 */
export function movingMean(values: Float64Array, width: number): Float64Array {
  const n = values.length;
  const sums = new Float64Array(n + 1);
  const counts = new Float64Array(n + 1);
  const about = values.find((value) => !Number.isNaN(value)) ?? 0; // differences keep the digits of a long sum
  for (let i = 0; i < n; i += 1) {
    const value = values[i] ?? Number.NaN;
    const missing = Number.isNaN(value);
    sums[i + 1] = (sums[i] ?? 0) + (missing ? 0 : value - about);
    counts[i + 1] = (counts[i] ?? 0) + (missing ? 0 : 1);
  }
  const most = Math.floor(width / 2);
  const out = new Float64Array(n);
  for (let i = 0; i < n; i += 1) {
    const half = Math.min(most, i, n - 1 - i);
    const count = (counts[i + half + 1] ?? 0) - (counts[i - half] ?? 0);
    out[i] = count > 0 ? about + ((sums[i + half + 1] ?? 0) - (sums[i - half] ?? 0)) / count : Number.NaN;
  }
  return out;
}
