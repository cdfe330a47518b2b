/**
 * The whole calculation once: legs in, corrections by speed, curve and wind out. It is run again with each sensor
 * shifted, so everything that was decided (groups, wind, curves) is decided beforehand in a plan.
 */
import { Matrix, solve } from 'ml-matrix';
import { impactPressure } from '../../air/index.ts';
import { correctedAirspeed, errorRatio } from '../../models/index.ts';
import { type AirChain, trueReading } from './air-chain.ts';
import { type CurveContext, type CurvePlan, coefficientsOf, curveCorrection, curveModel, liftOf } from './curve.ts';
import { fitLegs, type LegFit, type SpeedModel } from './fit.ts';
import type { Leg } from './leg.ts';
import { type Correction, type LinearLeg, linearLegs } from './linear-legs.ts';
import type { SpeedGroup } from './speeds.ts';
import type { WindModel } from './wind-model.ts';

export interface Plan {
  groups: readonly SpeedGroup[];
  wind: WindModel;
  curves: readonly CurvePlan[];
  /** a correction of its own for each speed; else the curve answers alone */
  free: boolean;
  wingArea: number | null;
}

export interface Solution {
  /** the fit the rows rest on */
  fit: LegFit;
  /** legs made straight about the answer */
  linear: LinearLeg[];
  /** correction of each leg at its own airspeed, m/s */
  legCorrections: number[];
  /** by group, at its mean airspeed: calibrated less true reading, m/s */
  corrections: number[];
  /** by group: calibrated airspeed, m/s */
  cas: number[];
  /** by group: change of the correction with the fit's speed unknowns, and of true airspeed with the correction */
  gradients: number[][];
  slopes: number[];
  curveFit: LegFit | null;
  coefficients: number[];
  /** coefficients that turn the uncorrected reading into calibrated airspeed, instrument error included */
  readingCoefficients: number[];
}

/** Corrections that move less than this between two passes have settled, m/s. */
const SETTLED = 1e-6;
const MOST_PASSES = 8;

/**
 * Solve the legs by a plan.
 * @param legs all legs
 * @param plan what may vary
 * @param chain how the instruments are read
 * @returns corrections, curve, wind
 * @throws OutOfRange when readings lie outside the relations of air data or the legs do not separate the unknowns
 * @source passes about the last answer, because the static pressure goes with the correction [rp-1046]
 */
export function solveLegs(legs: readonly Leg[], plan: Plan, chain: AirChain): Solution {
  const speedOnly = plan.groups.some((group) => Number.isNaN(group.ias));
  const groupOf = legs.map((_, i) => plan.groups.findIndex((group) => group.legs.includes(i)));
  if (speedOnly) return solveSpeedOnly(legs, plan, chain, groupOf);
  const context: CurveContext = { legs, plans: plan.curves, wingArea: plan.wingArea, chain };
  const curve = settle((coefficients) => {
    const trial: Correction = (i, ias) => curveCorrection(context, coefficients, i, ias);
    return fitLegs(legs, linearLegs(legs, trial, chain), plan.wind, startedAt(curveModel(context), coefficients));
  }, curveModel(context).start);
  const coefficients = curve.speeds;
  // Offsets of each speed from the curve; the curve gives the slope within a speed.
  const along = (i: number, ias: number) => curveCorrection(context, coefficients, i, ias);
  const offsets = plan.groups.map(() => 0);
  const withOffsets =
    (e: readonly number[]): Correction =>
    (i, ias) =>
      along(i, ias) + (e[groupOf[i] ?? 0] ?? 0);
  const model = (e: readonly number[]): SpeedModel => ({
    start: [...e],
    correction: (i, unknowns) => along(i, legs[i]?.ias ?? 0) + (unknowns[groupOf[i] ?? 0] ?? 0),
    gradient: (i) => plan.groups.map((_, g) => (g === groupOf[i] ? 1 : 0)),
  });
  const fit = plan.free
    ? settle((e) => fitLegs(legs, linearLegs(legs, withOffsets(e), chain), plan.wind, model(e)), offsets)
    : curve;
  const found = plan.free ? fit.speeds : offsets;
  const linear = linearLegs(legs, withOffsets(found), chain);
  const corrections = plan.groups.map((group, g) => meanOver(group, (i) => along(i, group.ias)) + (found[g] ?? 0));
  const cas = plan.groups.map((group, g) => trueReading(group.ias, chain) + (corrections[g] ?? 0));
  const gradient = curveModel(context).gradient;
  return {
    fit,
    linear,
    legCorrections: legs.map((leg, i) => withOffsets(found)(i, leg.ias)),
    corrections,
    cas,
    gradients: plan.groups.map((group, g) =>
      plan.free
        ? plan.groups.map((_, k) => (k === g ? 1 : 0))
        : coefficients.map((_, k) => meanOver(group, (i) => gradient(i, coefficients)[k] ?? 0)),
    ),
    slopes: plan.groups.map((group) => meanOver(group, (i) => linear[i]?.slope ?? 1)),
    curveFit: curve,
    coefficients,
    readingCoefficients: throughReading(context, coefficients, plan.groups),
  };
}

function solveSpeedOnly(legs: readonly Leg[], plan: Plan, chain: AirChain, groupOf: readonly number[]): Solution {
  const linear = linearLegs(legs, () => 0, chain);
  const starts = plan.groups.map((group) =>
    meanOver(group, (i) => Math.hypot(legs[i]?.samples.north[0] ?? 0, legs[i]?.samples.east[0] ?? 0)),
  );
  const model: SpeedModel = {
    start: starts,
    correction: (i, unknowns) => unknowns[groupOf[i] ?? 0] ?? 0,
    gradient: (i) => plan.groups.map((_, g) => (g === groupOf[i] ? 1 : 0)),
  };
  const fit = fitLegs(legs, linear, plan.wind, model);
  return {
    fit,
    linear,
    legCorrections: legs.map((_, i) => fit.speeds[groupOf[i] ?? 0] ?? 0),
    corrections: fit.speeds,
    cas: plan.groups.map(() => Number.NaN),
    gradients: plan.groups.map((_, g) => plan.groups.map((__, k) => (k === g ? 1 : 0))),
    slopes: plan.groups.map(() => 1),
    curveFit: null,
    coefficients: [],
    readingCoefficients: [],
  };
}

function settle(solveFrom: (from: readonly number[]) => LegFit, start: readonly number[]): LegFit {
  let last = solveFrom(start);
  for (let pass = 1; pass < MOST_PASSES; pass += 1) {
    const next = solveFrom(last.speeds);
    const moved = Math.max(...next.speeds.map((value, j) => Math.abs(value - (last.speeds[j] ?? 0))));
    last = next;
    if (moved < SETTLED) break;
  }
  return last;
}

function startedAt(model: SpeedModel, start: readonly number[]): SpeedModel {
  return { ...model, start: [...start] };
}

function meanOver(group: SpeedGroup, of: (leg: number) => number): number {
  return group.legs.reduce((sum, i) => sum + of(i) / group.legs.length, 0);
}

// With a shifted airspeed instrument the curve holds for the true reading; other reductions have only the reading. The
// polynomial of the same degree through the speeds flown, taken of the reading's impact pressure, says the same.
function throughReading(context: CurveContext, coefficients: number[], groups: readonly SpeedGroup[]): number[] {
  const { shift } = context.chain;
  if (shift.ias === 0 && shift.iasGain === 0) return coefficients;
  return context.plans.flatMap((plan) => {
    const own = coefficientsOf(plan, coefficients);
    const points = groups
      .filter((group) => group.flaps === plan.flaps)
      .map((group) => {
        const x = liftOf(context.legs[group.legs[0] ?? 0], context.wingArea, group.ias);
        const cas = correctedAirspeed(trueReading(group.ias, context.chain), errorRatio(plan, own, x));
        return { z: (x - plan.centre) / plan.scale, ratio: impactPressure(cas) / impactPressure(group.ias) - 1 };
      });
    const powers = new Matrix(points.map(({ z }) => own.map((_, k) => z ** k)));
    return solve(powers, Matrix.columnVector(points.map(({ ratio }) => ratio))).to1DArray();
  });
}
