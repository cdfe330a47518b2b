/** Straight line by least squares, with an honest error when the residuals are correlated in time. */
import { OutOfRange } from '../remarks/index.ts';
import { varianceInflation } from './autocorrelation.ts';

export interface LineFit {
  slope: number;
  /** value at x = 0 */
  intercept: number;
  /** where the line is known best, and its value there */
  meanX: number;
  meanY: number;
  /** standard deviation of one residual, divisor n - 2 (of unit weight where weights were given) */
  s: number;
  /** standard uncertainty of the slope and of the line at meanX: these two are independent */
  uSlope: number;
  uMean: number;
  /** degrees of freedom behind both */
  nu: number;
  /** variance inflation applied for correlation, 1 for none */
  inflation: number;
  residuals: Float64Array;
}

export interface LineOptions {
  /** relative weights, 1 over variance; equal when left out */
  weights?: ArrayLike<number>;
  /** the samples follow each other in time: spacing and least credible correlation time, s */
  correlated?: { dt: number; floor: number };
}

/**
 * Line through points; a pair with a missing value (NaN) is left out.
 * @param x abscissae, any one unit
 * @param y ordinates, any one unit
 * @param options weights; correlation in time, object
 * @returns slope, values and their standard uncertainties, in those units
 * @throws OutOfRange with fewer than three points, or all at one x
 * @source least squares [jcgm-100] H.3; residual correlation by the within-segment rule [simulation]
 */
export function fitLine(x: ArrayLike<number>, y: ArrayLike<number>, options: LineOptions = {}): LineFit {
  const kept: number[] = [];
  for (let i = 0; i < Math.min(x.length, y.length); i += 1) {
    if (Number.isFinite(x[i]) && Number.isFinite(y[i]) && weightAt(options.weights, i) > 0) kept.push(i);
  }
  const n = kept.length;
  if (n < 3) throw new OutOfRange('points of a line', n, '3 or more');
  let sw = 0;
  let swx = 0;
  let swy = 0;
  for (const i of kept) {
    const w = weightAt(options.weights, i);
    sw += w;
    swx += w * at(x, i);
    swy += w * at(y, i);
  }
  const meanX = swx / sw;
  const meanY = swy / sw;
  let sxx = 0;
  let sxy = 0;
  for (const i of kept) {
    const w = weightAt(options.weights, i);
    sxx += w * (at(x, i) - meanX) ** 2;
    sxy += w * (at(x, i) - meanX) * (at(y, i) - meanY);
  }
  if (!(sxx > 0)) throw new OutOfRange('spread of x', sxx, 'above 0');
  const slope = sxy / sxx;
  const residuals = Float64Array.from(kept, (i) => at(y, i) - meanY - slope * (at(x, i) - meanX));
  let rss = 0;
  kept.forEach((i, k) => {
    rss += weightAt(options.weights, i) * at(residuals, k) ** 2;
  });
  const s = Math.sqrt(rss / (n - 2));
  const { correlated } = options;
  const inflation = correlated ? varianceInflation(residuals, correlated.dt, correlated.floor) : 1;
  const nu = correlated ? Math.max(3, n / inflation - 2) : n - 2;
  // The divisor n - 2 becomes n_eff - 2 where the samples say less than their count.
  const widened = correlated ? s * Math.sqrt((inflation * (n - 2)) / (n * Math.max(0.5, 1 - 2 / (n / inflation)))) : s;
  return {
    slope,
    intercept: meanY - slope * meanX,
    meanX,
    meanY,
    s,
    uSlope: widened / Math.sqrt(sxx),
    uMean: widened / Math.sqrt(sw),
    nu,
    inflation,
    residuals,
  };
}

/**
 * The line's value at x.
 * @param fit a fitted line, object
 * @param x abscissa, its unit
 * @returns value and standard uncertainty of the line (not of the next reading), unit of y
 * @source the value at the mean and the slope are uncorrelated [jcgm-100] H.3.4
 */
export function valueOnLine(fit: LineFit, x: number): { value: number; u: number } {
  const away = x - fit.meanX;
  return { value: fit.meanY + fit.slope * away, u: Math.hypot(fit.uMean, fit.uSlope * away) };
}

const at = (values: ArrayLike<number>, i: number) => values[i] ?? Number.NaN;
const weightAt = (weights: ArrayLike<number> | undefined, i: number) => (weights ? at(weights, i) : 1);
