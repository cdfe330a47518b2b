/** Mean of a correlated record with its standard uncertainty (the within-segment rule). */
import { varianceInflation } from './autocorrelation.ts';

export interface WithinSegment {
  mean: number;
  /** standard deviation of the residuals, divisor n */
  s: number;
  n: number;
  /** variance inflation F */
  inflation: number;
  nEff: number;
  /** standard uncertainty of the mean */
  u: number;
  /** degrees of freedom of u, at least 3 */
  nu: number;
}

/**
 * Mean and standard uncertainty of evenly spaced, correlated samples.
 * @param samples values without gaps, any one unit
 * @param dt spacing, s
 * @param correlationFloor least credible correlation time, s
 * @param fitted parameters already taken out of the samples beside the mean, count
 * @returns mean, scatter, effective size, u and degrees of freedom, in the unit of the samples
 * @source u = s sqrt(1/n_eff)/sqrt(1 - 1/n_eff), nu = max(3, n_eff - p); coverage 93-100 % at 60 s and more [simulation]
 */
export function meanWithin(
  samples: ArrayLike<number>,
  dt: number,
  correlationFloor: number,
  fitted = 0,
): WithinSegment {
  const n = samples.length;
  let mean = 0;
  for (let i = 0; i < n; i += 1) mean += (samples[i] ?? 0) / n;
  const residuals = Float64Array.from(samples, (value) => value - mean);
  return { mean, ...scatterWithin(residuals, dt, correlationFloor, 1 + fitted) };
}

/**
 * Scatter and effective size of residuals from which a model was already taken.
 * @param residuals evenly spaced, any one unit
 * @param dt spacing, s
 * @param correlationFloor least credible correlation time, s
 * @param fitted parameters of the model taken out, count
 * @returns scatter, effective size, u of a mean over them and degrees of freedom, in the unit of the residuals
 * @source as meanWithin [simulation]
 */
export function scatterWithin(
  residuals: ArrayLike<number>,
  dt: number,
  correlationFloor: number,
  fitted: number,
): Omit<WithinSegment, 'mean'> {
  const n = residuals.length;
  let squares = 0;
  for (let i = 0; i < n; i += 1) squares += (residuals[i] ?? 0) ** 2;
  const s = n > 0 ? Math.sqrt(squares / n) : 0;
  const inflation = varianceInflation(residuals, dt, correlationFloor);
  const nEff = n / inflation;
  const u = nEff > 1 ? s / Math.sqrt(nEff) / Math.sqrt(1 - 1 / nEff) : Number.POSITIVE_INFINITY;
  return { s, n, inflation, nEff, u, nu: Math.max(3, nEff - fitted) };
}
