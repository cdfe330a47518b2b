/** Degrees of freedom of a combined standard uncertainty. */

/** A standard uncertainty of one origin with how well it is itself known. */
export interface StandardUncertainty {
  /** standard uncertainty, in the unit of the result (sensitivity already in it) */
  u: number;
  /** degrees of freedom; Infinity when known without doubt */
  nu: number;
}

/**
 * Effective degrees of freedom, nu_eff = u_c^4 / sum(u_i^4 / nu_i).
 * @param parts standard uncertainties in one unit with their degrees of freedom, list
 * @returns degrees of freedom, real; Infinity when nothing uncertain has finite ones
 * @source [jcgm-100] equation G.2b
 */
export function effectiveDegreesOfFreedom(parts: readonly StandardUncertainty[]): number {
  const variance = parts.reduce((sum, { u }) => sum + u * u, 0);
  const below = parts.reduce((sum, { u, nu }) => sum + u ** 4 / nu, 0);
  return below > 0 ? variance ** 2 / below : Number.POSITIVE_INFINITY;
}
