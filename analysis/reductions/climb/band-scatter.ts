/** Scatter of one climb in a band: from points about their curve and, where both say the same, from runs within pairs. */
import { type Scatter, scatterPosterior } from '../../numbers/index.ts';

/** Scatter of one run, m/s, before this airplane has shown its own, and how far it may lie from it: common practice. */
export const CLIMB_SCATTER = { s0: 0.15, factor: 3 } as const;
/** Variance of points over that within pairs above which the pairs say nothing of the points: common practice, no source. */
const POOLED = 4;

/**
 * Scatter of one climb. Points that stand further off their curve than their own runs differ hold something that both
 * runs of a pair shared: then the pair is one run, and only the points may say how far a point can be trusted.
 * @param rss sum of squares of the points about their curve, as of single runs, m2/s2
 * @param nu its degrees of freedom, count
 * @param pairs sum of squares within pairs, as of single runs, m2/s2, and its degrees of freedom
 * @returns scatter of one run, m/s, with its degrees of freedom
 * @throws OutOfRange when a sum of squares or a count is negative
 * @source Bayesian scatter with a lognormal prior [memory]; coverage [simulation]
 */
export function bandScatter(rss: number, nu: number, pairs: { rss: number; nu: number }): Scatter {
  const shared = nu > 0 && pairs.nu > 0 && rss / nu > POOLED * (pairs.rss / pairs.nu);
  return shared
    ? scatterPosterior(CLIMB_SCATTER, rss, nu)
    : scatterPosterior(CLIMB_SCATTER, rss + pairs.rss, nu + pairs.nu);
}
