/** The regression: log of temperature over air on logs of power, dynamic pressure and door, weighed in kelvins. */
import { DEFAULT_REPEATABILITY } from '../../models/index.ts';
import { leastSquares, type Scatter, scatterPosterior } from '../../numbers/index.ts';
import type { SteadyReading } from './point.ts';
import { logOf, type Term } from './terms.ts';

export interface ExcessFit {
  terms: Term[];
  /** logarithm of the excess at the middle of the points, then the exponents */
  beta: number[];
  /** (X'WX)^-1, weights the square of the excess, so that times the scatter squared it is the covariance */
  inverse: number[][];
  /** scatter of one point, K */
  scatter: Scatter;
  /** measured less fitted, K, one a reading */
  residuals: number[];
  /** degrees of freedom of the points alone */
  nu: number;
}

/** Sensor errors put on the points before a fit, to see what they do. */
export interface Shift {
  hot?: number;
  air?: number;
  airspeed?: number;
  door?: number;
}

/** The usual scatter of one point, and how many times more or less it may be: as for runs on the ground. */
export const POINT_SCATTER = { s0: DEFAULT_REPEATABILITY['ground-run-equilibrium'].s0, factor: 3 } as const;

/** Steady points for each exponent. */
export const POINTS_PER_TERM = 3;

/**
 * Fit the points of one temperature.
 * @param readings points, every variable known at each, list
 * @param terms what varied, list
 * @param s0 usual scatter of one point, K
 * @param shift sensor errors added to every point, K, K, m/s, share of travel
 * @returns exponents with covariance and scatter
 * @throws OutOfRange when the points do not separate the terms, or an excess is not above zero
 * @source linear least squares in logarithms; prior on the scatter as for climbs and legs [simulation]
 */
export function fitExcess(
  readings: readonly SteadyReading[],
  terms: readonly Term[],
  s0: number,
  shift: Shift = {},
): ExcessFit {
  const rows = readings.map(({ setting }) => rowOf(setting, terms, shift));
  const excesses = readings.map(({ temperature, air }) => temperature + (shift.hot ?? 0) - air - (shift.air ?? 0));
  // a point's own error is kelvins, whatever its excess: its logarithm is weighed by the excess measured
  const weights = readings.map(({ excess }) => excess);
  const logs = excesses.map((one) => Math.log(one));
  const fit = leastSquares({
    start: [logs.reduce((sum, one) => sum + one / logs.length, 0), ...terms.map(() => 0)],
    residuals: (beta) => rows.map((row, i) => (weights[i] ?? 0) * ((logs[i] ?? 0) - dot(row, beta))),
    jacobian: () => rows.map((row, i) => row.map((one) => -one * (weights[i] ?? 0))),
  });
  return {
    terms: [...terms],
    beta: fit.parameters,
    inverse: fit.inverse,
    scatter: scatterPosterior({ s0, factor: POINT_SCATTER.factor }, fit.rss, fit.nu),
    residuals: rows.map((row, i) => (excesses[i] ?? 0) - Math.exp(dot(row, fit.parameters))),
    nu: fit.nu,
  };
}

/** One row of the design: a one, and each logarithm from its middle. */
export function rowOf(setting: SteadyReading['setting'], terms: readonly Term[], shift: Shift = {}): number[] {
  return [1, ...terms.map(({ name, centre }) => (logOf(name, setting, shift.airspeed, shift.door) ?? centre) - centre)];
}

/**
 * Excess over air that a fit gives at a row of its design, with the standard uncertainty of that mean.
 * @param fit exponents with covariance, object
 * @param row of the design, list
 * @returns K
 */
export function excessAt(
  { beta, inverse, scatter }: Pick<ExcessFit, 'beta' | 'inverse'> & { scatter: { s: number } },
  row: readonly number[],
): { excess: number; u: number } {
  const excess = Math.exp(dot(row, beta));
  const variance = row.reduce((sum, a, i) => sum + a * dot(inverse[i] ?? [], row), 0);
  return { excess, u: excess * scatter.s * Math.sqrt(Math.max(0, variance)) };
}

/** Sum of products; a missing factor counts as nothing. */
export function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, one, i) => sum + one * (b[i] ?? 0), 0);
}
