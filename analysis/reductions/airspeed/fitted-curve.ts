/** The smooth curve with its covariance, lack of fit and sensor shifts: what other reductions and the handbook use. */

import { type AirspeedCalibration, type CorrectionCurve, correctedAirspeed, errorRatio } from '../../models/index.ts';
import { rankModels } from '../../numbers/index.ts';
import type { AirChain } from './air-chain.ts';
import { type CurvePlan, coefficientsOf, curvePlans, liftOf } from './curve.ts';
import type { Doubt } from './doubt.ts';
import { solveLegs } from './solve.ts';

/** Legs a curve's doubt of fit is worth little below. */
const LEAST_FREEDOM = 1;

/**
 * The calibration of an answer.
 * @param doubt answer and what its uncertainty is made of
 * @param commonStatic airspeed and altimeter share the static source
 * @returns the calibration, or null where only speed over the ground was written
 */
export function calibrationOf(doubt: Doubt, commonStatic: boolean): AirspeedCalibration | null {
  const { solution, plan, legs } = doubt;
  const { curveFit } = solution;
  if (!curveFit) return null;
  // The scatter of legs about their own speeds; how far the speeds stand off the curve is added as lack of fit.
  const { s, nu } = doubt.scatter;
  const windUnknowns = plan.wind.axes.length * plan.wind.terms.length;
  const masses = legs.map((leg) => leg.mass);
  const mass = masses.some((one) => one === null)
    ? null
    : masses.reduce((sum: number, one) => sum + (one ?? 0) / masses.length, 0);
  const lackOfFit = lackOfFitOf(doubt);
  const curves = plan.curves.map((own): CorrectionCurve => {
    const place = windUnknowns + own.first;
    const groups = plan.groups.filter((group) => group.flaps === own.flaps);
    const speeds = groups.map((group) => group.ias);
    const slopes = groups.map((group) => solution.slopes[plan.groups.indexOf(group)] ?? 1);
    const slope = slopes.reduce((sum, one) => sum + one / slopes.length, 0);
    return {
      flaps: own.flaps,
      centre: own.centre,
      scale: own.scale,
      coefficients: coefficientsOf(own, solution.coefficients),
      covariance: Array.from({ length: own.terms }, (_, a) =>
        Array.from({ length: own.terms }, (__, b) => s ** 2 * (curveFit.inverse[place + a]?.[place + b] ?? 0)),
      ),
      nu,
      lackOfFit: Math.hypot(lackOfFit.u / slope, turnDoubt(doubt, own)),
      lackOfFitNu: lackOfFit.nu,
      shifted: doubt.shifted.map(({ sensor, base, solution: other }) => ({
        sensor: sensor.name,
        nu: sensor.nu,
        coefficients: coefficientsOf(own, solution.coefficients).map(
          (value, k) =>
            value + (other.readingCoefficients[own.first + k] ?? 0) - (base.readingCoefficients[own.first + k] ?? 0),
        ),
      })),
      flown: [Math.min(...speeds), Math.max(...speeds)],
      speeds: groups.length,
      legs: groups.reduce((sum, group) => sum + group.legs.length, 0),
    };
  });
  return {
    format: 'airspeed-calibration-1',
    mass,
    wingArea: plan.wingArea,
    commonStatic,
    legScatter: doubt.scatter.s,
    legScatterNu: doubt.scatter.nu,
    curves,
  };
}

// From turns the curve is brought to level flight by the lift it took to turn. Whether the port's error goes all the way
// with lift is not known from turns alone: anything from all of it to nothing is allowed, evenly.
function turnDoubt(doubt: Doubt, own: CurvePlan): number {
  const { plan, legs, solution } = doubt;
  const coefficients = coefficientsOf(own, solution.coefficients);
  const turned = plan.groups.filter(
    (group) => group.flaps === own.flaps && group.legs.some((i) => (legs[i]?.loadFactor ?? 1) > 1),
  );
  const changes = turned.map((group) => {
    const leg = legs[group.legs[0] ?? 0];
    const x = liftOf(leg, plan.wingArea, group.ias);
    const level = x / (leg?.loadFactor ?? 1);
    return Math.abs(
      correctedAirspeed(group.ias, errorRatio(own, coefficients, x)) -
        correctedAirspeed(group.ias, errorRatio(own, coefficients, level)),
    );
  });
  return changes.length > 0 ? Math.max(...changes) / Math.sqrt(3) : 0;
}

/**
 * How far speeds stand off the curve beyond what their scatter explains.
 * @param doubt answer with both fits
 * @returns standard uncertainty, m/s of true airspeed, with its degrees of freedom
 * @source mean square of lack of fit less pure error, over legs a speed: analysis of variance of a regression [memory]
 */
export function lackOfFitOf(doubt: Doubt): { u: number; nu: number } {
  const { solution, plan, legs } = doubt;
  const terms = plan.curves.reduce((sum, own) => sum + own.terms, 0);
  const freedom = plan.groups.length - terms;
  if (!plan.free || !solution.curveFit || freedom < LEAST_FREEDOM) return { u: 0, nu: Number.POSITIVE_INFINITY };
  const pure = solution.fit.nu > 0 ? solution.fit.rss / solution.fit.nu : doubt.scatter.s ** 2;
  const square = (solution.curveFit.rss - solution.fit.rss) / freedom;
  const each = legs.length / plan.groups.length;
  return { u: Math.sqrt(Math.max(0, (square - pure) / each)), nu: LACK_OF_FIT_FREEDOM };
}

/** The rule adds four times its variance to U95 squared: a factor of 2, which is t of many degrees of freedom. */
const LACK_OF_FIT_FREEDOM = 60;

export interface CurveRank {
  name: string;
  terms: number;
  rss: number;
  aicc: number | null;
  used: boolean;
}

/**
 * Curves of each degree side by side by the corrected information criterion: shown, not obeyed.
 * @param doubt answer
 * @param chain how the instruments are read
 * @returns one a degree that the speeds can carry
 * @throws OutOfRange outside the relations of air data
 */
export function curveRanks(doubt: Doubt, chain: AirChain): CurveRank[] {
  const { plan, legs, solution } = doubt;
  const used = Math.max(...plan.curves.map((own) => own.terms));
  const tried = [1, 2, 3]
    .filter((terms) => terms <= used)
    .map((terms) => {
      const curves = curvePlans(plan.groups, legs, plan.wingArea, terms);
      const fit =
        terms === used ? solution.curveFit : solveLegs(legs, { ...plan, curves, free: false }, chain).curveFit;
      const unknowns = curves.reduce((sum, own) => sum + own.terms, plan.wind.axes.length * plan.wind.terms.length);
      return { name: NAMES[terms - 1] ?? '', terms, rss: fit?.rss ?? Number.NaN, parameters: unknowns };
    });
  const ranked = rankModels(tried, legs.length);
  return tried.map(({ name, terms, rss }) => ({
    name,
    terms,
    rss,
    aicc: ranked.find((one) => one.name === name)?.aicc ?? null,
    used: terms === used,
  }));
}

const NAMES = ['constant', 'straight', 'bent'];
