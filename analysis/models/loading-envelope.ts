/** The allowed envelope of mass and arm: limits at a mass, and whether a case lies inside with its uncertainty. */
import type { Balance } from './moments.ts';

export interface Corner {
  /** kg */
  mass: number;
  /** m aft of the datum */
  arm: number;
}

export interface ArmLimits {
  forward: number;
  aft: number;
}

export interface EnvelopeMargin {
  /** true when the whole box of U95 about the case lies inside */
  inside: boolean;
  /** true when the best estimate lies inside */
  estimateInside: boolean;
  /** m to the forward and to the aft limit at this mass, U95 taken off; null beyond the masses of the envelope */
  forward: number | null;
  aft: number | null;
  /** kg to the highest mass, U95 taken off */
  mass: number;
  limits: ArmLimits | null;
}

/**
 * Forward and aft limit at a mass: the outermost crossings of the envelope's outline.
 * @param corners corners in order round the envelope, kg and m, at least 3
 * @param mass kg
 * @returns limits in m aft of the datum; null outside the masses the envelope covers
 * @source geometry of the envelope as the designer drew it [own]
 */
export function armLimitsAt(corners: readonly Corner[], mass: number): ArmLimits | null {
  const crossings: number[] = [];
  for (const [i, a] of corners.entries()) {
    const b = corners[(i + 1) % corners.length];
    if (!b || mass < Math.min(a.mass, b.mass) || mass > Math.max(a.mass, b.mass)) continue;
    if (a.mass === b.mass) crossings.push(a.arm, b.arm);
    else crossings.push(a.arm + ((mass - a.mass) / (b.mass - a.mass)) * (b.arm - a.arm));
  }
  return crossings.length < 2 ? null : { forward: Math.min(...crossings), aft: Math.max(...crossings) };
}

/**
 * Whether a case lies inside the envelope with all of its uncertainty.
 * @param corners corners in order round the envelope, kg and m, at least 3
 * @param at mass in kg and arm in m with their U95
 * @returns inside or not, and the margins to each limit, m and kg, U95 taken off
 * @source decision rule as for every comparison with a limit: inside only with U95 inside [jcgm-100], rule [own]
 */
export function marginInEnvelope(corners: readonly Corner[], at: Balance): EnvelopeMargin {
  const highest = Math.max(...corners.map((corner) => corner.mass));
  const limits = armLimitsAt(corners, at.mass);
  const box = [at.mass - at.massU95, at.mass, at.mass + at.massU95].map((mass) => armLimitsAt(corners, mass));
  const forward = narrowest(box, (one) => at.arm - at.armU95 - one.forward);
  const aft = narrowest(box, (one) => one.aft - (at.arm + at.armU95));
  return {
    inside: forward !== null && aft !== null && forward >= 0 && aft >= 0,
    estimateInside: limits !== null && at.arm >= limits.forward && at.arm <= limits.aft,
    forward,
    aft,
    mass: highest - at.mass - at.massU95,
    limits,
  };
}

function narrowest(box: readonly (ArmLimits | null)[], margin: (limits: ArmLimits) => number): number | null {
  let least: number | null = null;
  for (const limits of box) {
    if (limits === null) return null;
    const here = margin(limits);
    if (least === null || here < least) least = here;
  }
  return least;
}
