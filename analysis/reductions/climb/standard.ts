/** From the climb flown to the standard one: energy, mass, and speed held constant as the pilot sees it. */
import { equivalentAirspeed, g0 } from '../../air/index.ts';
import {
  climbCorrectionFactor,
  excessPowerAtWeight,
  type InducedDrag,
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
  /** u of the mass flown, kg */
  uMass: number;
}

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
  const atMass = (mass: number | null, e: number) => {
    if (mass === null || to.mass === null) return Ps;
    const Wt = mass * g0;
    const Ws = to.mass * g0;
    const Ve = equivalentAirspeed(run.cas, run.p);
    const dD = to.wing ? inducedDragChange(Wt, Ws, Ve, wingOf(to.wing, e)) : 0;
    return excessPowerAtWeight(Ps, Wt, Ws, run.tas, dD);
  };
  const PsStandard = atMass(run.mass, to.e.value);
  const byE = atMass(run.mass, to.e.value + to.e.u) - PsStandard;
  const byMass = run.mass === null ? 0 : atMass(run.mass + to.uMass, to.e.value) - PsStandard;
  const byWind = lone ? 0.5 * windGradientEffect(run.rate, run.tas, GRADIENT) : 0;
  return {
    ...run,
    Ps,
    PsStandard,
    ccf,
    rateStandard: PsStandard * ccf,
    correction: { u: Math.hypot(byE, byMass, byWind), nu: 50 },
    lone,
  };
}

const wingOf = (wing: { S: number; A: number }, e: number): InducedDrag => ({ ...wing, e });
