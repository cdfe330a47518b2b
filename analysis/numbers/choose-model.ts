/**
 * Model comparison by the corrected information criterion. Shown, not obeyed: quoting the winner's own interval covers
 * 58 to 93 % at the worst point [simulation], so the reductions fit the richest model their data rules allow.
 */
import { OutOfRange } from '../remarks/index.ts';

/** Below this many n - k - 1 the correction itself is wild. */
export const LEAST_SPARE = 3;

/**
 * Corrected Akaike criterion of a least-squares fit; only differences on the same data mean anything.
 * @param rss residual sum of squares, above 0, any unit
 * @param n points, count
 * @param parameters fitted parameters without the variance, count
 * @returns AICc, pure number; less is better
 * @throws OutOfRange when rss is not above 0, or n - k - 1 is under 3 with k = parameters + 1
 * @source Hurvich and Tsai 1989: n ln(RSS/n) + 2 k + 2 k (k + 1)/(n - k - 1) [memory]
 */
export function correctedAkaike(rss: number, n: number, parameters: number): number {
  const k = parameters + 1;
  if (!(rss > 0)) throw new OutOfRange('residual sum of squares', rss, 'above 0');
  if (n - k - 1 < LEAST_SPARE) throw new OutOfRange('n - k - 1', n - k - 1, `${LEAST_SPARE} or more`);
  return n * Math.log(rss / n) + 2 * k + (2 * k * (k + 1)) / (n - k - 1);
}

export interface Candidate {
  name: string;
  rss: number;
  parameters: number;
}

export interface Ranked {
  name: string;
  aicc: number;
  /** difference to the best */
  behind: number;
  /** Akaike weight, 0 to 1 */
  weight: number;
}

/**
 * Rank models fitted to the same n points; those too rich for the criterion are left out.
 * @param candidates name, residual sum of squares and number of parameters of each, list
 * @param n points, count
 * @returns best first, with weights, list; empty when none can be compared
 * @source weights exp(-difference/2), normalised: Burnham and Anderson [memory]
 */
export function rankModels(candidates: readonly Candidate[], n: number): Ranked[] {
  const scored = candidates
    .filter((one) => one.rss > 0 && n - one.parameters - 2 >= LEAST_SPARE)
    .map((one) => ({ name: one.name, aicc: correctedAkaike(one.rss, n, one.parameters) }))
    .sort((a, b) => a.aicc - b.aicc);
  const best = scored[0]?.aicc ?? 0;
  const total = scored.reduce((sum, one) => sum + Math.exp((best - one.aicc) / 2), 0);
  return scored.map((one) => ({ ...one, behind: one.aicc - best, weight: Math.exp((best - one.aicc) / 2) / total }));
}
