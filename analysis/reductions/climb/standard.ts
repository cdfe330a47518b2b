/** From the climb flown to the standard one: energy, mass, and speed held constant as the pilot sees it. */
import { equivalentAirspeed, g0 } from '../../air/index.ts';
import {
  climbCorrectionFactor,
  excessPowerAtWeight,
  inducedDragChange,
  specificExcessPower,
  trueAirspeedGradient,
  windGradientEffect,
} from '../../models/index.ts';
import type { ClimbRun, StandardRun } from './run.ts';

/** Where nobody measured it: span efficiency and its standard uncertainty (common practice, no source). */
export const ASSUMED_E = { value: 0.75, u: 0.05 } as const;

/** Beyond this change of mass the induced-drag part needs a measured span efficiency. */
export const MOST_MASS_CHANGE = 0.15;

// Half the effect of this wind gradient stands for a lone run without a wind profile: common practice, no source.
const GRADIENT = 2 / 300;

export interface StandardConditions {
  /** standard mass, kg; null leaves every run at the mass flown */
  mass: number | null;
  wing: { S: number; A: number } | null;
  e: { value: number; u: number; assumed: boolean };
  /** u of the mass flown, kg, and whether the standard mass is off with it because neither was stated */
  uMass: number;
  massesTogether: boolean;
}

/** What may be off in all climbs at once, each by one standard uncertainty. */
export type CommonError = 'mass' | 'span efficiency' | 'wind';
export const COMMON_ERRORS: readonly CommonError[] = ['mass', 'span efficiency', 'wind'];

/**
 * A run on the standard day at its density altitude.
 * @param run what was flown, SI
 * @param to standard mass, wing and span efficiency, SI
 * @param lone true when no reciprocal run stands beside it, boolean
 * @returns the run with Ps, CCF and the standard rate
 * @throws OutOfRange when a weight or speed is outside the formulas
 * @source order of corrections: energy, then weight on Ps, then CCF [ftm-108]
 */
export function toStandard(run: ClimbRun, to: StandardConditions, lone: boolean): StandardRun {
  const Ps = specificExcessPower(run.rate, run.tas, run.dVdt);
  const ccf = climbCorrectionFactor(run.tas, trueAirspeedGradient(run.cas, run.Hd));
  const PsStandard = atStandardMass(run, Ps, to);
  const off = COMMON_ERRORS.map((error) => shiftOf(error, run, Ps, to, lone));
  return {
    ...run,
    Ps,
    PsStandard,
    ccf,
    rateStandard: PsStandard * ccf,
    correction: { u: Math.hypot(...off), nu: 50 },
    lone,
  };
}

/**
 * The standard rate were one of the common errors present: rerun, not differentiated.
 * @param error which, text
 * @param run a run as it stands
 * @param to standard conditions
 * @param heading of the climbs, rad, against which the wind is taken to grow; null where none is known
 * @returns standard rate with the error in it, m/s
 * @throws OutOfRange when a weight or speed is outside the formulas
 */
export function rateWith(error: CommonError, run: StandardRun, to: StandardConditions, heading: number | null): number {
  const along = heading === null || run.heading === null ? 1 : Math.cos(run.heading - heading);
  return run.rateStandard + shiftOf(error, run, run.Ps, to, run.lone) * run.ccf * (error === 'wind' ? along : 1);
}

// What one standard uncertainty of a common error does to the excess power at the standard mass.
function shiftOf(error: CommonError, run: ClimbRun, Ps: number, to: StandardConditions, lone: boolean): number {
  if (error === 'wind') return lone ? 0.5 * windGradientEffect(run.rate, run.tas, GRADIENT) : 0;
  if (run.mass === null || to.mass === null) return 0;
  const here = atStandardMass(run, Ps, to);
  if (error === 'span efficiency') {
    return atStandardMass(run, Ps, { ...to, e: { ...to.e, value: to.e.value + to.e.u } }) - here;
  }
  const mass = to.massesTogether ? to.mass + to.uMass : to.mass;
  return atStandardMass({ ...run, mass: run.mass + to.uMass }, Ps, { ...to, mass }) - here;
}

function atStandardMass(run: ClimbRun, Ps: number, to: StandardConditions): number {
  if (run.mass === null || to.mass === null) return Ps;
  const Wt = run.mass * g0;
  const Ws = to.mass * g0;
  const Ve = equivalentAirspeed(run.cas, run.p);
  const dD = to.wing ? inducedDragChange(Wt, Ws, Ve, { ...to.wing, e: to.e.value }) : 0;
  return excessPowerAtWeight(Ps, Wt, Ws, run.tas, dD);
}
