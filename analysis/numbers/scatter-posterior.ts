/**
 * Run-to-run scatter when the runs may be far better, or worse, than the usual: a wide prior on its logarithm.
 *
 * `scatterWithPrior` holds the scatter up near its prior until ten degrees of freedom and then lets go at once; where
 * runs can be ten times steadier than the default (speed legs in smooth air) that makes U95 four times too wide with
 * nine degrees of freedom and falls off a step at ten. Here the prior is lognormal: median s0, one standard deviation
 * a factor. With no runs it gives the same interval (2.16 s0 against 2.15 s0); with four and more it follows the runs.
 */
import { OutOfRange } from '../remarks/index.ts';
import { normalCdf } from './normal-distribution.ts';
import type { Scatter } from './prior-scatter.ts';
import { NO_PRIOR_FROM, SHOWN_FROM } from './prior-scatter.ts';
import { studentTQuantile } from './student-t.ts';

export interface ScatterPrior {
  /** median of the scatter of one run, unit of the value */
  s0: number;
  /** one standard deviation up or down of the scatter is this factor, above 1 */
  factor: number;
}

/** Standard deviations of the prior covered by the grid, and its points: doubling both moves a quantile by 1e-4. */
const REACH = 6;
const POINTS = 241;
/** A share of the weight too small to move a quantile. */
const NEGLIGIBLE = 1e-12;

/**
 * Scatter of one run and its degrees of freedom: the t distribution that matches the mixture of normals over every
 * scatter the runs and the prior allow, at its 84 % and 97.5 % quantiles.
 * @param prior median and factor of the scatter, unit of the value
 * @param rss sum of squared between-run residuals, unit of the value squared
 * @param nu their degrees of freedom, 0 or more
 * @returns scatter with the degrees of freedom to use it with
 * @throws OutOfRange when the prior is not positive, rss or nu negative
 * @source Bayesian scatter with a lognormal prior [memory]; coverage against the conjugate prior [simulation]
 */
export function scatterPosterior(prior: ScatterPrior, rss: number, nu: number): Scatter {
  if (!(prior.s0 > 0)) throw new OutOfRange('prior scatter', prior.s0, 'above 0');
  if (!(prior.factor > 1)) throw new OutOfRange('prior factor', prior.factor, 'above 1');
  if (!(rss >= 0)) throw new OutOfRange('sum of squares', rss, '0 or more');
  if (!(nu >= 0)) throw new OutOfRange('degrees of freedom', nu, '0 or more');
  const { s, weight } = weights(prior, rss, nu);
  const quantile = (p: number) => mixtureQuantile(s, weight, p);
  const one = quantile(ONE_SIGMA);
  const two = quantile(0.975);
  const match = matchT(two / one);
  return {
    s: two / studentTQuantile(0.975, match),
    nu: match,
    priorUsed: nu < NO_PRIOR_FROM,
    assumed: nu < SHOWN_FROM,
  };
}

const ONE_SIGMA = normalCdf(1);

function weights(prior: ScatterPrior, rss: number, nu: number): { s: Float64Array; weight: Float64Array } {
  const wide = Math.log(prior.factor);
  const own = nu > 0 && rss > 0 ? Math.log(Math.sqrt(rss / nu) / prior.s0) / wide : 0;
  const from = Math.min(0, own) - REACH;
  const step = (Math.max(0, own) + REACH - from) / (POINTS - 1);
  const s = new Float64Array(POINTS);
  const logs = new Float64Array(POINTS);
  for (let i = 0; i < POINTS; i += 1) {
    const z = from + i * step;
    const value = prior.s0 * Math.exp(wide * z);
    s[i] = value;
    logs[i] = -0.5 * z * z - nu * Math.log(value) - rss / (2 * value * value);
  }
  const top = logs.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY);
  const weight = logs.map((value) => Math.exp(value - top));
  const total = weight.reduce((sum, value) => sum + value, 0);
  return { s, weight: weight.map((value) => value / total) };
}

// Newton steps inside a bracket: the density is the derivative of the share below.
function mixtureQuantile(s: Float64Array, weight: Float64Array, p: number): number {
  let low = 0;
  let high = Number.POSITIVE_INFINITY;
  let x = s.reduce((sum, value, i) => sum + (weight[i] ?? 0) * value, 0);
  for (let i = 0; i < 100; i += 1) {
    let below = -p;
    let density = 0;
    for (let k = 0; k < s.length; k += 1) {
      const w = weight[k] ?? 0;
      if (w < NEGLIGIBLE) continue;
      const z = x / (s[k] ?? 1);
      below += w * normalCdf(z);
      density += (w * Math.exp(-0.5 * z * z)) / (s[k] ?? 1);
    }
    if (below > 0) high = x;
    else low = x;
    const newton = x - (below * Math.sqrt(2 * Math.PI)) / density;
    const next = newton > low && newton < high ? newton : high === Number.POSITIVE_INFINITY ? 2 * x : (low + high) / 2;
    if (Math.abs(next - x) < 1e-9 * x) return next;
    x = next;
  }
  return x;
}

// The ratio of the two quantiles falls as nu grows: 6.9 at nu = 1 to 1.96 for a normal.
function matchT(ratio: number): number {
  const of = (nu: number) => studentTQuantile(0.975, nu) / studentTQuantile(ONE_SIGMA, nu);
  let low = 0.5;
  let high = 1000;
  if (of(high) >= ratio) return high;
  for (let i = 0; i < 30; i += 1) {
    const middle = Math.sqrt(low * high);
    if (of(middle) > ratio) low = middle;
    else high = middle;
  }
  return Math.sqrt(low * high);
}
