/** How well each correction, true airspeed and wind is known: scatter between legs, sensors, lack of fit. */

import { DEFAULT_REPEATABILITY } from '../../models/index.ts';
import {
  type Combined,
  combineUncertainty,
  coverageFactor,
  effectiveDegreesOfFreedom,
  type Scatter,
  scatterPosterior,
  scatterWithin,
  type UncertaintySource,
} from '../../numbers/index.ts';
import type { AirChain } from './air-chain.ts';
import { sampleResiduals } from './fit.ts';
import { condensed, type Leg } from './leg.ts';
import type { Sensor } from './sensors.ts';
import { type Plan, type Solution, solveLegs } from './solve.ts';
import { turnInflation } from './turn-correlation.ts';

/** Scatter of legs is this factor up or down from its default, one standard deviation: smooth air against rough. */
export const SCATTER_FACTOR = 2.5;
/**
 * Correlation inside a leg is taken as it shows. The floor that protects an error made of noise alone is not wanted: the
 * error comes from the scatter between legs, and the noise only says how much of that is explained.
 */
const CORRELATION_FLOOR = 0;

export interface Shifted {
  sensor: Sensor;
  /** answers of the thinned legs, as they are and with the sensor shifted: only their difference counts */
  base: Solution;
  solution: Solution;
}

export interface Doubt {
  scatter: Scatter;
  /** how many neighbouring blocks of a turn one independent block is worth; 1 for legs */
  inflation: number;
  /** expected scatter of one leg before any was flown, m/s */
  legScatter: number;
  /** standard uncertainty of each leg's residual from the noise within it, m/s */
  within: number[];
  shifted: Shifted[];
  plan: Plan;
  solution: Solution;
  legs: readonly Leg[];
}

/**
 * Scatter between legs and the answer with each sensor shifted.
 * @param legs all legs
 * @param plan what may vary
 * @param chain how the instruments are read
 * @param solution the answer
 * @param sensors those in doubt
 * @param legScatter expected scatter of one leg, m/s
 * @returns what the uncertainty of every value is made of
 * @throws OutOfRange when a shifted reading lies outside the relations of air data
 */
export function doubtOf(
  legs: readonly Leg[],
  plan: Plan,
  chain: AirChain,
  solution: Solution,
  sensors: readonly Sensor[],
  legScatter: number = DEFAULT_REPEATABILITY['airspeed-leg'].s0,
): Doubt {
  // Blocks that hang together count as fewer: the same sum of squares with fewer degrees of freedom.
  const inflation = turnInflation(legs, solution.fit.residuals);
  const thin = legs.map(condensed);
  const base = sensors.length > 0 ? solveLegs(thin, plan, chain) : solution;
  return {
    scatter: legScatterOf(solution.fit.rss, solution.fit.nu / inflation, legScatter),
    inflation,
    legScatter,
    within: legs.map((leg, i) => withinLeg(leg, i, solution)),
    shifted: sensors.map((sensor) => ({
      sensor,
      base,
      solution: solveLegs(sensor.legs(thin), plan, sensor.chain(chain)),
    })),
    plan,
    solution,
    legs,
  };
}

/**
 * Scatter of one leg.
 * @param rss sum of squared residuals, m2/s2
 * @param nu their degrees of freedom
 * @param legScatter expected scatter, m/s
 * @returns scatter with its degrees of freedom
 */
export function legScatterOf(rss: number, nu: number, legScatter: number): Scatter {
  return scatterPosterior({ s0: legScatter, factor: SCATTER_FACTOR }, rss, nu);
}

// Noise is taken on the difference, sample by sample: what the airspeed and the satellites share is no noise.
function withinLeg(leg: Leg, i: number, solution: Solution): number {
  const linear = solution.linear[i];
  const wind = solution.fit.windOf[i];
  if (leg.samples.ias.length < 8 || !linear || !wind) return 0;
  const residuals = sampleResiduals(leg, linear, solution.legCorrections[i] ?? 0, wind);
  const mean = residuals.reduce((sum, r) => sum + r / residuals.length, 0);
  return scatterWithin(
    residuals.map((r) => r - mean),
    leg.dt,
    CORRELATION_FLOOR,
    1,
  ).u;
}

/**
 * Standard uncertainty of a linear combination of the fit's unknowns.
 * @param doubt scatter and fit
 * @param weights of all unknowns, wind first
 * @returns total from the scatter between legs, and the part of it that noise within legs explains; unit of the sum
 * @source covariance s^2 (J'J)^-1; noise through the fit's own weights [jcgm-100]
 */
export function randomPart(doubt: Doubt, weights: readonly number[]): { total: number; noise: number } {
  const { inverse, jacobian } = doubt.solution.fit;
  const through = inverse.map((row) => row.reduce((sum, value, k) => sum + value * (weights[k] ?? 0), 0));
  const variance = weights.reduce((sum, w, k) => sum + w * (through[k] ?? 0), 0);
  const total = doubt.scatter.s * Math.sqrt(Math.max(0, variance));
  const noise = Math.hypot(
    ...jacobian.map((row, i) => row.reduce((sum, d, k) => sum + d * (through[k] ?? 0), 0) * (doubt.within[i] ?? 0)),
  );
  return { total, noise: Math.min(total, noise) };
}

/**
 * Weights that pick a group's correction out of the unknowns.
 * @param doubt plan and solution
 * @param group which, from 0
 * @returns one weight an unknown
 */
export function groupWeights(doubt: Doubt, group: number): number[] {
  const { wind } = doubt.plan;
  return [
    ...new Array<number>(wind.axes.length * wind.terms.length).fill(0),
    ...(doubt.solution.gradients[group] ?? []),
  ];
}

/**
 * Expanded uncertainty from its parts: the scatter of legs and everything else are expanded each with its own degrees of
 * freedom and added in quadrature. With two or three legs to spare one common factor would shrink when a sensor's doubt
 * is added, because that has many degrees of freedom: adding a doubt must not narrow an interval.
 * @param random total and noise as standard uncertainties
 * @param nu degrees of freedom of the scatter
 * @param others sensors, lack of fit, recording step
 * @returns combined, with noise and repeatability told apart
 * @source [jcgm-100] clause 5 and annex G for each of the two; their sum in quadrature [simulation]
 */
export function combined(
  random: { total: number; noise: number },
  nu: number,
  others: readonly UncertaintySource[],
): Combined {
  const rest = combineUncertainty(others.filter((one) => one.u > 0));
  const factor = coverageFactor(nu);
  const repeatability = factor * Math.sqrt(Math.max(0, random.total ** 2 - random.noise ** 2));
  const u = Math.hypot(random.total, rest.u);
  const u95 = Math.hypot(factor * random.total, rest.u95);
  return {
    u,
    nu: effectiveDegreesOfFreedom([{ u: random.total, nu }, ...(rest.u > 0 ? [rest] : [])]),
    k: u > 0 ? u95 / u : factor,
    u95,
    parts: { ...rest.parts, noise: Math.hypot(rest.parts.noise ?? 0, factor * random.noise), repeatability },
  };
}

/**
 * What each sensor's shift does to a value.
 * @param doubt shifted answers
 * @param of the value as a function of an answer
 * @returns sources of calibration, one a sensor
 */
export function sensorSources(doubt: Doubt, of: (solution: Solution) => number): UncertaintySource[] {
  return doubt.shifted.map(({ sensor, base, solution }) => ({
    part: 'calibration',
    u: Math.abs(of(solution) - of(base)),
    nu: sensor.nu,
  }));
}
