/** Time constants tried on one record: what each would mean, how badly it fits, and which of them the noise allows. */

import { type SolvedAtTau, solveAtTau } from './heating-at-tau.ts';
import type { Blocks } from './heating-blocks.ts';

/** One time constant tried, with the best answer at it; K and s. */
export interface ProfilePoint {
  tau: number;
  /** T_eq - T_air */
  excess: number;
  /** temperature at the start of the record */
  start: number;
  /** misfit over the best one, in squared standard errors */
  over: number;
  /** standard error of excess at this tau, and how far the start moves with it */
  excessU: number;
  startPerExcess: number;
}

/** What is known of a time constant beforehand: its middle, s, and the factor of one standard deviation either way. */
export interface TauPrior {
  tau: number;
  factor: number;
}

/**
 * Misfit of a solution, what is known beforehand included.
 * @param one the solution, object
 * @param error standard error of a mean of independent blocks, K
 * @param prior what is known of the time constant, or null
 * @param firm how many times as heavy the prior weighs, pure number
 * @returns squared standard errors, pure number
 * @source sum of squares with a normal prior on log tau [memory]
 */
export function costOf(one: SolvedAtTau, error: number, prior: TauPrior | null, firm: number): number {
  const known = prior === null ? 0 : ((firm * Math.log(one.tau / prior.tau)) / Math.log(prior.factor)) ** 2;
  return one.rss / error ** 2 + known;
}

/**
 * Solutions at time constants evenly spread in their logarithm.
 * @param blocks temperatures and air, object
 * @param fastest first time constant, s
 * @param slowest last one, s
 * @param count how many
 * @returns solutions in order
 * @throws OutOfRange when a time constant is not above 0
 * @source grid in log tau [memory]
 */
export function triedBetween(blocks: Blocks, fastest: number, slowest: number, count: number): SolvedAtTau[] {
  return Array.from({ length: count }, (_, i) =>
    solveAtTau(blocks, fastest * (slowest / fastest) ** (i / (count - 1))),
  );
}

/**
 * The best time constant: a parabola through the lowest solution and its neighbours; at an end of them, that end.
 * @param blocks temperatures and air, object
 * @param solved solutions evenly spread in log tau, list
 * @param cost what to make least, function
 * @returns the best solution
 * @throws Error when no solution is given: a mistake of ours
 * @throws OutOfRange when a time constant is not above 0
 * @source parabola through three points [memory]
 */
export function bestOf(
  blocks: Blocks,
  solved: readonly SolvedAtTau[],
  cost: (one: SolvedAtTau) => number,
): SolvedAtTau {
  const costs = solved.map(cost);
  const least = costs.reduce((best, one, i) => (one < (costs[best] ?? 0) ? i : best), 0);
  const [left, middle, right] = [solved[least - 1], solved[least], solved[least + 1]];
  if (!middle) throw new Error('no time constant was tried');
  if (!left || !right) return middle;
  const [a, b, c] = [costs[least - 1] ?? 0, costs[least] ?? 0, costs[least + 1] ?? 0];
  const bend = a - 2 * b + c;
  if (!(bend > 0)) return middle;
  const step = Math.log(right.tau / middle.tau);
  const finer = solveAtTau(blocks, middle.tau * Math.exp((step * (a - c)) / (2 * bend)));
  return cost(finer) < b ? finer : middle;
}

export interface Scale {
  /** least cost */
  least: number;
  cost(one: SolvedAtTau): number;
  /** standard error of a mean of independent blocks, K */
  error: number;
  /** middle of the first block, s, and the air there, K */
  begin: number;
  air: number;
}

/**
 * A solution as a profile point. Its start belongs to the middle of the first block; the record begins half a block
 * earlier.
 * @param one the solution, object
 * @param scale cost, error and the first block, object
 * @returns the point
 * @source solution of the first-order heat balance [memory]
 */
export function pointOf(one: SolvedAtTau, { least, cost, error, begin, air }: Scale): ProfilePoint {
  const back = Math.exp(begin / one.tau);
  const settled = air + one.excess;
  return {
    tau: one.tau,
    excess: one.excess,
    start: settled + (one.start - settled) * back,
    over: Math.max(0, cost(one) - least),
    excessU: error * Math.sqrt(one.excessExcess),
    startPerExcess: 1 - back + (one.startExcess / one.excessExcess) * back,
  };
}

/**
 * Ends of what is kept: every time constant within k standard errors, and at each every D the rest of k allows.
 * @param profile points, list
 * @param k coverage factor
 * @returns least and most D, K, and time constant, s
 * @source profile likelihood interval [memory]
 */
export function keptEnds(profile: readonly ProfilePoint[], k: number) {
  const kept = profile.filter((one) => one.over <= k * k);
  const reach = (one: ProfilePoint) => one.excessU * Math.sqrt(k * k - one.over);
  return {
    excessLow: Math.min(...kept.map((one) => one.excess - reach(one))),
    excessHigh: Math.max(...kept.map((one) => one.excess + reach(one))),
    tauLow: Math.min(...kept.map((one) => one.tau)),
    tauHigh: Math.max(...kept.map((one) => one.tau)),
  };
}
