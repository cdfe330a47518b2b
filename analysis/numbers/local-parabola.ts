/**
 * A parabola fitted about each sample: smooths, and keeps the height of a rounded top, which a moving mean cuts off. At
 * an end the window stays inside the record and the parabola is read at its edge, so nothing is borrowed from beyond.
 */

export interface LocalParabola {
  /** value at each sample, unit of the values */
  value: Float64Array;
  /** slope, unit per second */
  slope: Float64Array;
  /** second derivative, unit per second squared */
  bend: Float64Array;
  /** variance of the value over the variance of a sample, for independent samples, pure number */
  leverage: Float64Array;
}

/**
 * Fit a parabola about each sample.
 * @param values evenly spaced, any one unit, NaN where missing
 * @param dt spacing, s
 * @param seconds full width of the window, s
 * @returns value, slope, bend and leverage at each sample; NaN where the window holds fewer than four readings
 * @source local quadratic regression (second-order Savitzky-Golay where nothing is missing) [memory]
 */
export function localParabola(values: Float64Array, dt: number, seconds: number): LocalParabola {
  const n = values.length;
  const half = Math.max(2, Math.round(seconds / 2 / dt));
  const make = () => new Float64Array(n).fill(Number.NaN);
  const out: LocalParabola = { value: make(), slope: make(), bend: make(), leverage: make() };
  for (let i = 0; i < n; i += 1) {
    const from = Math.max(0, i - half);
    const to = Math.min(n - 1, i + half);
    const fit = fitAbout(values, i, from, to, half);
    if (!fit) continue;
    out.value[i] = fit.value;
    out.slope[i] = fit.slope / (half * dt);
    out.bend[i] = (2 * fit.square) / (half * dt) ** 2;
    out.leverage[i] = fit.leverage;
  }
  return out;
}

const LEAST_READINGS = 4;

// Normal equations in x = (k - i)/half, about the value at hand so that no digits are lost.
function fitAbout(values: Float64Array, i: number, from: number, to: number, half: number) {
  let [n, s1, s2, s3, s4, y0, y1, y2] = [0, 0, 0, 0, 0, 0, 0, 0];
  let about = Number.NaN;
  for (let k = from; k <= to; k += 1) {
    const value = values[k] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    if (Number.isNaN(about)) about = value;
    const x = (k - i) / half;
    const y = value - about;
    n += 1;
    s1 += x;
    s2 += x * x;
    s3 += x ** 3;
    s4 += x ** 4;
    y0 += y;
    y1 += x * y;
    y2 += x * x * y;
  }
  if (n < LEAST_READINGS) return null;
  // first row and first column of the inverse give the value at x = 0 and its variance
  const c00 = s2 * s4 - s3 * s3;
  const c01 = s2 * s3 - s1 * s4;
  const c02 = s1 * s3 - s2 * s2;
  const c11 = n * s4 - s2 * s2;
  const c12 = s1 * s2 - n * s3;
  const c22 = n * s2 - s1 * s1;
  const det = n * c00 + s1 * c01 + s2 * c02;
  if (!(Math.abs(det) > 1e-9)) return null;
  return {
    value: about + (c00 * y0 + c01 * y1 + c02 * y2) / det,
    slope: (c01 * y0 + c11 * y1 + c12 * y2) / det,
    square: (c02 * y0 + c12 * y1 + c22 * y2) / det,
    leverage: c00 / det,
  };
}
