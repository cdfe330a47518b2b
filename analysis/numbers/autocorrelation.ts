/** How much a row of correlated residuals is worth, in units of independent samples. */

/**
 * Variance inflation of a mean of evenly spaced residuals: the largest of three estimates, then capped.
 *
 * AR(1) with its small-sample bias returned sees short correlation; Geyer's initial positive sequence sees slow wander
 * under white noise, to which r1 is blind; the floor holds where the record is too short to see either. The cap keeps
 * n / F >= 5, else a few slow swings make the interval useless.
 * @param residuals evenly spaced, mean about 0, any one unit
 * @param dt spacing, s
 * @param correlationFloor least credible correlation time, s: 10 for temperatures and slopes, 5 for speed legs
 * @returns factor 1 or more on the variance of a mean of independent samples, pure number
 * @source AR(1) bias and initial positive sequence [memory]; floor and cap measured in [simulation]
 */
export function varianceInflation(residuals: ArrayLike<number>, dt: number, correlationFloor: number): number {
  const n = residuals.length;
  const cap = Math.max(1, n / LEAST_EFFECTIVE);
  const floor = Math.max(1, (2 * correlationFloor) / dt);
  if (floor >= cap || n < 3) return cap;
  const c0 = autocovariance(residuals, 0);
  if (!(c0 > 0)) return Math.min(cap, floor);
  const r1 = autocovariance(residuals, 1) / c0;
  const r = Math.min(0.98, Math.max(0, r1 + (1 + 4 * r1) / n));
  const firstOrder = (1 + r) / (1 - r);
  const least = Math.max(floor, firstOrder);
  if (least >= cap) return cap;
  return Math.min(cap, Math.max(least, initialPositiveSequence(residuals, c0, cap)));
}

/** An n / F below this would make every interval useless; coverage with it stands in the simulations. */
export const LEAST_EFFECTIVE = 5;

// -1 + 2 sum of pairs (rho_2m + rho_2m+1) while the pair is above 0; stops where the cap would cut it anyway.
function initialPositiveSequence(x: ArrayLike<number>, c0: number, cap: number): number {
  let sum = 0;
  for (let lag = 0; lag + 1 < x.length / 2; lag += 2) {
    const pair = (autocovariance(x, lag) + autocovariance(x, lag + 1)) / c0;
    if (pair <= 0) break;
    sum += pair;
    if (-1 + 2 * sum >= cap) break;
  }
  return Math.max(1, -1 + 2 * sum);
}

function autocovariance(x: ArrayLike<number>, lag: number): number {
  let sum = 0;
  for (let i = lag; i < x.length; i += 1) sum += (x[i] ?? 0) * (x[i - lag] ?? 0);
  return sum / x.length;
}
