/** Between-run scatter from few runs: what was seen, steadied by a weak prior. */

export interface Scatter {
  /** standard deviation of one run */
  s: number;
  nu: number;
  /** true while the prior still weighs in */
  priorUsed: boolean;
  /** true while repeatability counts as assumed: under 4 degrees of freedom of its own */
  assumed: boolean;
}

/** From this many degrees of freedom on the runs speak for themselves. */
export const NO_PRIOR_FROM = 10;

/** Below this many the scatter counts as assumed. */
export const SHOWN_FROM = 4;

/**
 * Run-to-run standard deviation, s^2 = (nu0 s0^2 + RSS)/(nu0 + nu).
 * @param prior s0 in the unit of the value, and nu0, the weight it has in degrees of freedom
 * @param rss sum of squared between-run residuals, unit of the value squared
 * @param nu their degrees of freedom, 0 or more
 * @returns scatter of one run with nu0 + nu degrees of freedom; without the prior once nu is 10 or more
 * @source conjugate prior on a variance [memory]; weights nu0 2 for airspeed legs, 4 elsewhere [simulation] [practice]
 */
export function scatterWithPrior(prior: { s0: number; nu0: number }, rss: number, nu: number): Scatter {
  const assumed = nu < SHOWN_FROM;
  if (nu >= NO_PRIOR_FROM) return { s: Math.sqrt(rss / nu), nu, priorUsed: false, assumed };
  const s = Math.sqrt((prior.nu0 * prior.s0 ** 2 + rss) / (prior.nu0 + nu));
  return { s, nu: prior.nu0 + nu, priorUsed: true, assumed };
}
