/** The heat balance at one time constant: linear in the start and in D, so least squares solves it at once. */
import { airResponse } from './heat-balance.ts';
import type { Blocks, HeldRecord } from './heating-blocks.ts';

export interface SolvedAtTau {
  tau: number;
  /** temperature at the first block, K */
  start: number;
  /** T_eq - T_air, K */
  excess: number;
  rss: number;
  /** inverse of the normal matrix: excess-excess and start-excess, pure numbers */
  excessExcess: number;
  startExcess: number;
}

/**
 * T(t) = A(t) + start e^(-t/tau) + D (1 - e^(-t/tau)), A the response to the measured air.
 * @param blocks temperatures and air, object
 * @param tau time constant, s
 * @returns best start and D with their misfit
 * @throws OutOfRange when tau is not above 0
 * @source least squares, linear in start and D at a given tau [memory]
 */
export function solveAtTau(blocks: Blocks, tau: number): SolvedAtTau {
  const { hot } = blocks;
  const response = airResponse(blocks.air, blocks.seconds, tau, blocks.response);
  const keep = Math.exp(-blocks.seconds / tau);
  const about = hot.find((value) => !Number.isNaN(value)) ?? 0; // differences keep the digits of the misfit
  let [ee, eg, gg, ey, gy, yy] = [0, 0, 0, 0, 0, 0];
  let e = 1;
  for (let i = 0; i < hot.length; i += 1, e *= keep) {
    const T = hot[i] ?? Number.NaN;
    if (Number.isNaN(T)) continue;
    const g = 1 - e;
    const y = T - about - (response[i] ?? 0);
    ee += e * e;
    eg += e * g;
    gg += g * g;
    ey += e * y;
    gy += g * y;
    yy += y * y;
  }
  const det = ee * gg - eg * eg;
  const start = (gg * ey - eg * gy) / det;
  const excess = (ee * gy - eg * ey) / det;
  const rss = Math.max(0, yy - start * ey - excess * gy);
  return { tau, start: start + about, excess: excess + about, rss, excessExcess: ee / det, startExcess: -eg / det };
}

/**
 * What a solution leaves over, sample by sample.
 * @param record the held condition, not blocked, object
 * @param point time constant, start at the first sample and D, object
 * @returns residuals, K, one a sample with a reading, in order
 * @throws OutOfRange when tau is not above 0
 * @source solution of the first-order heat balance [memory]
 */
export function residualsOf(record: HeldRecord, point: { tau: number; start: number; excess: number }): Float64Array {
  const response = airResponse(record.air, record.dt, point.tau);
  const keep = Math.exp(-record.dt / point.tau);
  const out: number[] = [];
  let e = 1;
  for (let i = 0; i < record.hot.length; i += 1, e *= keep) {
    const T = record.hot[i] ?? Number.NaN;
    if (!Number.isNaN(T)) out.push(T - (response[i] ?? 0) - point.start * e - point.excess * (1 - e));
  }
  return Float64Array.from(out);
}

/**
 * Residuals about the curve rounded to the recorder's step, as it would have been recorded without noise.
 * @param record the held condition, object
 * @param residuals of its curve, K, one a sample with a reading
 * @returns residuals, K; those given where the record shows no step
 * @source rounding of the fitted curve itself [simulation]
 */
export function besideRounded(record: HeldRecord, residuals: Float64Array): Float64Array {
  const { step } = record;
  if (step === 0) return residuals;
  const readings = record.hot.filter((value) => !Number.isNaN(value));
  const origin = readings[0] ?? 0;
  return residuals.map((residual, i) => {
    const T = readings[i] ?? 0;
    return T - (origin + step * Math.round((T - residual - origin) / step));
  });
}
