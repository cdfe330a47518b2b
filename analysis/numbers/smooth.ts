/**
 * Smoothing and slope without phase shift: what happens at a time stays at that time. Windows are symmetric always,
 * shrinking towards the ends of a stretch, and never reach over a gap.
 */
import { OutOfRange } from '../remarks/index.ts';

/**
 * Smoothed values: a moving mean run twice, which weighs a window as a triangle.
 * @param t times, rising, s
 * @param v values, any one unit; NaN is a missing value and stays missing
 * @param width full width of each moving mean, s
 * @param hold longest step between samples that is not a gap, s
 * @returns smoothed values, unit of v; NaN where v is
 * @throws OutOfRange when the width is not above 0
 * @source symmetric (zero-phase) moving mean [memory]
 */
export function smooth(t: ArrayLike<number>, v: ArrayLike<number>, width: number, hold: number): Float64Array {
  if (!(width > 0)) throw new OutOfRange('smoothing width', width, 'above 0 s');
  const once = eachWindow(t, v, width, hold, (local) => local.mean);
  return eachWindow(t, once, width, hold, (local) => local.mean);
}

/**
 * Slope of a line fitted in a symmetric window about each sample.
 * @param t times, rising, s
 * @param v values, any one unit; NaN is a missing value and stays missing
 * @param width full width of the window, s
 * @param hold longest step between samples that is not a gap, s
 * @returns slope, unit of v per second; NaN where v is missing or the window holds fewer than three samples
 * @throws OutOfRange when the width is not above 0
 * @source local straight line, first-order Savitzky-Golay on uneven times [memory]
 */
export function slopes(t: ArrayLike<number>, v: ArrayLike<number>, width: number, hold: number): Float64Array {
  if (!(width > 0)) throw new OutOfRange('slope width', width, 'above 0 s');
  return eachWindow(t, v, width, hold, (local) => (local.n >= 3 ? local.slope : Number.NaN));
}

interface Local {
  n: number;
  mean: number;
  slope: number;
}

function eachWindow(
  t: ArrayLike<number>,
  v: ArrayLike<number>,
  width: number,
  hold: number,
  take: (local: Local) => number,
): Float64Array {
  const out = new Float64Array(v.length).fill(Number.NaN);
  for (const stretch of stretches(t, v, hold))
    sweep(stretch, width, (i, local) => {
      out[i] = take(local);
    });
  return out;
}

/** Samples between gaps, their indices in the whole. */
interface Stretch {
  index: number[];
  t: number[];
  v: number[];
}

function stretches(t: ArrayLike<number>, v: ArrayLike<number>, hold: number): Stretch[] {
  const all: Stretch[] = [];
  let current: Stretch = { index: [], t: [], v: [] };
  let last = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < v.length; i += 1) {
    const [time, value] = [t[i] ?? Number.NaN, v[i] ?? Number.NaN];
    if (Number.isNaN(value) || Number.isNaN(time)) continue;
    if (time - last > hold) {
      current = { index: [], t: [], v: [] };
      all.push(current);
    }
    current.index.push(i);
    current.t.push(time);
    current.v.push(value);
    last = time;
  }
  return all;
}

// Sums before each sample give any window's mean and slope in constant time; times are taken from the stretch's start
// and values from its first value so that no digits are lost.
function sweep(stretch: Stretch, width: number, found: (index: number, local: Local) => void): void {
  const { t, v, index } = stretch;
  const n = t.length;
  const t0 = t[0] ?? 0;
  const v0 = v[0] ?? 0;
  const end = (t[n - 1] ?? t0) - t0;
  const sum = { t: [0], v: [0], tt: [0], tv: [0] };
  for (let i = 0; i < n; i += 1) {
    const x = (t[i] ?? t0) - t0;
    const y = (v[i] ?? v0) - v0;
    sum.t.push((sum.t[i] ?? 0) + x);
    sum.v.push((sum.v[i] ?? 0) + y);
    sum.tt.push((sum.tt[i] ?? 0) + x * x);
    sum.tv.push((sum.tv[i] ?? 0) + x * y);
  }
  const between = (list: number[], from: number, to: number) => (list[to] ?? 0) - (list[from] ?? 0);
  let from = 0;
  let to = 0;
  for (let i = 0; i < n; i += 1) {
    const x = (t[i] ?? t0) - t0;
    const half = Math.min(width / 2, x, end - x) + 1e-9;
    while (from < n && (t[from] ?? t0) - t0 < x - half) from += 1;
    while (from > 0 && (t[from - 1] ?? t0) - t0 >= x - half) from -= 1;
    while (to < n && (t[to] ?? t0) - t0 <= x + half) to += 1;
    while (to > i + 1 && (t[to - 1] ?? t0) - t0 > x + half) to -= 1;
    const count = to - from;
    const meanT = between(sum.t, from, to) / count;
    const meanV = between(sum.v, from, to) / count;
    const sxx = between(sum.tt, from, to) - count * meanT * meanT;
    const sxy = between(sum.tv, from, to) - count * meanT * meanV;
    found(index[i] ?? 0, { n: count, mean: meanV + v0, slope: sxx > 0 ? sxy / sxx : Number.NaN });
  }
}
