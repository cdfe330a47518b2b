/** A channel at even times, for computing only: means over each step, nothing filled over a gap. */
import { valuesAt } from '../values-at.ts';

/**
 * Resamples a channel to even times from 0 on.
 * @param t rising, s from the first record
 * @param v one value a time, any one unit; NaN where missing
 * @param step wanted step, s
 * @param holdSeconds longest step of the recorder across which a value may be taken, s
 * @returns one value a step, unit of the values; NaN in gaps
 */
export function evenSignal(t: Float64Array, v: Float64Array, step: number, holdSeconds: number): Float64Array {
  const count = t.length === 0 ? 0 : Math.floor((t[t.length - 1] ?? 0) / step + 1e-9) + 1;
  const sum = new Float64Array(count);
  const seen = new Float64Array(count);
  // the mean time of the samples in a cell is kept, so that an uneven cell does not shift the signal
  const late = new Float64Array(count);
  for (let i = 0; i < t.length; i += 1) {
    const value = v[i] ?? Number.NaN;
    const cell = Math.round((t[i] ?? 0) / step);
    if (!Number.isFinite(value) || cell >= count) continue;
    sum[cell] = (sum[cell] ?? 0) + value;
    late[cell] = (late[cell] ?? 0) + (t[i] ?? 0);
    seen[cell] = (seen[cell] ?? 0) + 1;
  }
  const filled = [...seen.keys()].filter((cell) => (seen[cell] ?? 0) > 0);
  const means = {
    quantity: '',
    file: '',
    column: '',
    t: Float64Array.from(filled, (cell) => (late[cell] ?? 0) / (seen[cell] ?? 1)),
    v: Float64Array.from(filled, (cell) => (sum[cell] ?? 0) / (seen[cell] ?? 1)),
    holdSeconds: Math.max(holdSeconds, 2.1 * step),
    flags: [],
  };
  return valuesAt(
    means,
    Float64Array.from({ length: count }, (_, i) => i * step),
  );
}

/**
 * Rate of change over a window centred on each step: symmetric, so that it shifts nothing.
 * @param v one value a step, any one unit
 * @param step s
 * @param halfWindow half the window, s
 * @returns unit of the values a second; NaN next to gaps
 */
export function evenRate(v: Float64Array, step: number, halfWindow: number): Float64Array {
  const reach = Math.max(1, Math.round(halfWindow / step));
  const span = 2 * reach * step;
  return v.map((_, i) => ((v[i + reach] ?? Number.NaN) - (v[i - reach] ?? Number.NaN)) / span);
}

/**
 * The signal less its moving mean.
 * @param v one value a step, any one unit
 * @param step s
 * @param halfWindow half the window of the mean, s
 * @returns unit of the values; NaN where missing
 */
export function highPassed(v: Float64Array, step: number, halfWindow: number): Float64Array {
  const reach = Math.max(1, Math.round(halfWindow / step));
  const sums = new Float64Array(v.length + 1);
  const counts = new Float64Array(v.length + 1);
  v.forEach((value, i) => {
    const there = Number.isFinite(value);
    sums[i + 1] = (sums[i] ?? 0) + (there ? value : 0);
    counts[i + 1] = (counts[i] ?? 0) + (there ? 1 : 0);
  });
  return v.map((value, i) => {
    const from = Math.max(0, i - reach);
    const to = Math.min(v.length, i + reach + 1);
    return value - ((sums[to] ?? 0) - (sums[from] ?? 0)) / ((counts[to] ?? 0) - (counts[from] ?? 0));
  });
}

/**
 * Means of groups of neighbouring steps.
 * @param v one value a step, any one unit
 * @param group steps in a group, count
 * @returns one mean a group; NaN where fewer than half are there
 */
export function thinned(v: Float64Array, group: number): Float64Array {
  return Float64Array.from({ length: Math.floor(v.length / group) }, (_, k) => {
    let [sum, count] = [0, 0];
    for (let i = k * group; i < (k + 1) * group; i += 1) {
      const value = v[i] ?? Number.NaN;
      if (!Number.isFinite(value)) continue;
      sum += value;
      count += 1;
    }
    return 2 * count >= group ? sum / count : Number.NaN;
  });
}
