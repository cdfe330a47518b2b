/** The correction as a curve: static pressure error over impact pressure, a polynomial in lift over impact pressure. */
import { correctedAirspeed, errorRatio, liftOverImpact } from '../../models/index.ts';
import { type AirChain, trueReading } from './air-chain.ts';
import type { SpeedModel } from './fit.ts';
import type { Leg } from './leg.ts';
import { distinctSpeeds, type SpeedGroup } from './speeds.ts';

/** One flap setting's curve, before its coefficients are known. */
export interface CurvePlan {
  flaps: string;
  /** polynomial terms, 1 to 3 */
  terms: number;
  /** place of its first coefficient among all */
  first: number;
  centre: number;
  scale: number;
}

export interface CurveContext {
  legs: readonly Leg[];
  plans: readonly CurvePlan[];
  wingArea: number | null;
  chain: AirChain;
}

/** Terms by the number of speeds: constant up to 2, straight for 3 and 4, bent from 5. */
export function curveTerms(speeds: number): number {
  if (speeds >= 5) return 3;
  return speeds >= 3 ? 2 : 1;
}

/**
 * Curves the groups can carry, one a flap setting.
 * @param groups speeds flown
 * @param legs all legs
 * @param wingArea m2, or null
 * @param most at most this many terms, count
 * @returns plans, coefficients to be found
 */
export function curvePlans(
  groups: readonly SpeedGroup[],
  legs: readonly Leg[],
  wingArea: number | null,
  most = 3,
): CurvePlan[] {
  const plans: CurvePlan[] = [];
  let first = 0;
  for (const flaps of new Set(groups.map((group) => group.flaps))) {
    const own = groups.filter((group) => group.flaps === flaps);
    const xs = own.flatMap((group) => group.legs.map((i) => liftOf(legs[i], wingArea, group.ias)));
    const terms = Math.min(most, curveTerms(distinctSpeeds(own)));
    const low = Math.min(...xs);
    const high = Math.max(...xs);
    plans.push({ flaps, terms, first, centre: (low + high) / 2, scale: high > low ? (high - low) / 2 : 1 });
    first += terms;
  }
  return plans;
}

/**
 * The curve as a model of the legs' corrections.
 * @param context legs, plans, wing area and how the instruments are read
 * @returns unknowns are all coefficients, setting by setting
 */
export function curveModel(context: CurveContext): SpeedModel {
  const count = context.plans.reduce((sum, plan) => sum + plan.terms, 0);
  return {
    start: new Array<number>(count).fill(0),
    correction: (i, unknowns) => curveCorrection(context, unknowns, i, context.legs[i]?.ias ?? 0),
    gradient: (i, unknowns) => {
      const leg = context.legs[i];
      const plan = planOf(context, leg);
      const gradient = new Array<number>(count).fill(0);
      if (!leg || !plan) return gradient;
      const read = trueReading(leg.ias, context.chain);
      const x = liftOf(leg, context.wingArea, leg.ias);
      const ratio = errorRatio(plan, coefficientsOf(plan, unknowns), x);
      const slope = (correctedAirspeed(read, ratio + STEP) - correctedAirspeed(read, ratio - STEP)) / (2 * STEP);
      for (let k = 0; k < plan.terms; k += 1) gradient[plan.first + k] = slope * ((x - plan.centre) / plan.scale) ** k;
      return gradient;
    },
  };
}

const STEP = 1e-4;

/**
 * Correction of a leg's curve at an indicated airspeed.
 * @param context legs, plans, wing area and how the instruments are read
 * @param coefficients all, setting by setting
 * @param i which leg
 * @param ias indicated airspeed, m/s
 * @returns calibrated airspeed less indicated airspeed free of instrument error, m/s
 */
export function curveCorrection(
  context: CurveContext,
  coefficients: readonly number[],
  i: number,
  ias: number,
): number {
  const leg = context.legs[i];
  const plan = planOf(context, leg);
  if (!leg || !plan) return 0;
  const read = trueReading(ias, context.chain);
  const x = liftOf(leg, context.wingArea, ias);
  return correctedAirspeed(read, errorRatio(plan, coefficientsOf(plan, coefficients), x)) - read;
}

/** Coefficients of one setting among all. */
export function coefficientsOf(plan: CurvePlan, all: readonly number[]): number[] {
  return all.slice(plan.first, plan.first + plan.terms);
}

/**
 * Lift over impact pressure of a leg at an indicated airspeed.
 * @param leg the leg
 * @param wingArea m2, or null
 * @param ias indicated airspeed, m/s
 * @returns x, pure number where mass and area are known
 */
export function liftOf(leg: Leg | undefined, wingArea: number | null, ias: number): number {
  return liftOverImpact({ mass: leg?.mass ?? null, wingArea }, ias, { loadFactor: leg?.loadFactor ?? 1 });
}

function planOf(context: CurveContext, leg: Leg | undefined): CurvePlan | undefined {
  return context.plans.find((plan) => plan.flaps === leg?.flaps);
}
