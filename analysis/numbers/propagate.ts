/** Parts of an uncertainty into one: quadrature, effective degrees of freedom, coverage factor. */
import type { Measured, UncertaintyParts } from './measured.ts';
import { coverageFactor } from './student-t.ts';
import { effectiveDegreesOfFreedom, type StandardUncertainty } from './welch-satterthwaite.ts';

export interface UncertaintySource extends StandardUncertainty {
  part: keyof UncertaintyParts;
}

export interface Combined {
  /** combined standard uncertainty */
  u: number;
  nu: number;
  /** t(0.975, nu) */
  k: number;
  u95: number;
  /** k times each part's standard uncertainty: they add in quadrature to u95 */
  parts: UncertaintyParts;
}

/**
 * Combine independent standard uncertainties into a 95 % half-width.
 * @param sources standard uncertainties in one unit, each with degrees of freedom and the part it belongs to, list
 * @returns combined u, degrees of freedom, factor, U95 and the parts as U95 contributions, in the same unit
 * @source [jcgm-100] clause 5.1 and annex G.4
 */
export function combineUncertainty(sources: readonly UncertaintySource[]): Combined {
  const u = Math.hypot(...sources.map((source) => source.u));
  const nu = effectiveDegreesOfFreedom(sources);
  const k = coverageFactor(nu);
  const parts: UncertaintyParts = {};
  for (const source of sources) parts[source.part] = Math.hypot(parts[source.part] ?? 0, k * source.u);
  return { u, nu, k, u95: k * u, parts };
}

/**
 * A value with its combined uncertainty.
 * @param value best estimate, SI
 * @param sources standard uncertainties in the unit of the value, list
 * @returns value, U95 and parts, SI
 * @source [jcgm-100] clause 6
 */
export function measuredWith(value: number, sources: readonly UncertaintySource[]): Measured {
  const { u95, parts } = combineUncertainty(sources);
  return { value, u95, parts };
}

/**
 * Standard uncertainty of a result from common sensor errors: shift each sensor by its own u, reduce again, add the
 * changes in quadrature. No derivative is guessed, and what cancels in a difference cancels here too.
 * @param shifts standard uncertainty of each sensor's offset, SI, by name
 * @param reduce the result as a function of the shifts applied, SI
 * @returns standard uncertainty of the result, in its unit, and each sensor's share
 * @source [jcgm-100] 5.1.3 note 2 (sensitivity by evaluation)
 */
export function propagateByShift(
  shifts: Readonly<Record<string, number>>,
  reduce: (applied: Readonly<Record<string, number>>) => number,
): { u: number; bySensor: Record<string, number> } {
  const base = reduce({});
  const changes = Object.entries(shifts).map(([name, u]) => [name, reduce({ [name]: u }) - base] as const);
  return { u: Math.hypot(...changes.map(([, change]) => change)), bySensor: Object.fromEntries(changes) };
}
