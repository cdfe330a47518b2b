/** One row a speed: correction, calibrated and true airspeed with their uncertainties. */
import { altitudeCorrection, impactPressure } from '../../air/index.ts';
import type { Combined, UncertaintySource } from '../../numbers/index.ts';
import { type AirChain, airOf } from './air-chain.ts';
import { combined, type Doubt, groupWeights, randomPart, sensorSources } from './doubt.ts';
import { meanOf } from './leg.ts';
import type { Solution } from './solve.ts';

/** A legs' geometry this weak is remarked on, and this weak is refused. */
export const DILUTION_WARN = 1;
export const DILUTION_REFUSE = 2;

export interface SpeedRow {
  flaps: string;
  /** from turns */
  turning: boolean;
  label: string;
  legs: number;
  /** mean indicated airspeed, m/s; NaN where not written */
  ias: number;
  cas: number;
  tas: number;
  /** calibrated less indicated airspeed, m/s */
  correction: number;
  /** of the position error: the airspeed instrument's own error in it */
  error: Combined;
  /** of calibrated airspeed for a reading of this instrument: its own error is inside the correction */
  casDoubt: Combined;
  tasDoubt: Combined;
  /** error of true airspeed for a unit error of one leg */
  dilution: number;
  height: number;
  /** static pressure and temperature of the air, Pa, K; NaN where only speed over the ground was written */
  p: number;
  T: number;
  mass: number | null;
  /** sensed less true static pressure, Pa, and altitude to add, m, if the pitot is right */
  staticError: number;
  altitudeCorrection: number;
  /** U95 of each sensor in the position error, m/s, by name */
  bySensor: Record<string, number>;
}

/**
 * Rows of the answer.
 * @param doubt answer and what its uncertainty is made of
 * @param chain how the instruments are read
 * @returns one a speed, in the order of the groups
 * @throws OutOfRange outside the relations of air data
 */
export function speedRows(doubt: Doubt, chain: AirChain): SpeedRow[] {
  const { solution, plan, legs, scatter } = doubt;
  return plan.groups.map((group, g) => {
    const own = group.legs.flatMap((i) => legs[i] ?? []);
    const over = (of: (leg: (typeof own)[number]) => number) => meanOf(own.map(of));
    const height = over((leg) => meanOf(leg.samples.height));
    const air = over((leg) => meanOf(leg.samples.air));
    const correction = solution.corrections[g] ?? Number.NaN;
    const slope = solution.slopes[g] ?? 1;
    const random = randomPart(doubt, groupWeights(doubt, g));
    const step: UncertaintySource = {
      part: 'noise',
      u: own.every((leg) => leg.stepBias > 0) ? over((leg) => leg.stepBias) : 0,
      nu: Number.POSITIVE_INFINITY,
    };
    const sensors = sensorSources(doubt, (one) => one.corrections[g] ?? 0);
    const error = combined(random, scatter.nu, [step, ...sensors]);
    const sensorFactor = (error.parts.calibration ?? 0) / (Math.hypot(...sensors.map((one) => one.u)) || 1);
    const speedOnly = Number.isNaN(group.ias);
    const { p, T } = speedOnly ? { p: Number.NaN, T: Number.NaN } : airOf(group.ias, correction, height, air, chain);
    const staticError = speedOnly ? Number.NaN : impactPressure(group.ias + correction) - impactPressure(group.ias);
    const inTas = { total: random.total * slope, noise: random.noise * slope };
    return {
      flaps: group.flaps,
      turning: group.turning,
      label: group.label,
      legs: group.legs.length,
      ias: group.ias,
      cas: solution.cas[g] ?? Number.NaN,
      tas: tasOfGroup(solution, group.legs, speedOnly),
      correction: speedOnly ? Number.NaN : correction,
      error,
      casDoubt: combined(random, scatter.nu, [step, ...sensorSources(doubt, (one) => one.cas[g] ?? 0)]),
      tasDoubt: combined(
        inTas,
        scatter.nu,
        sensorSources(doubt, (one) => tasOfGroup(one, group.legs, speedOnly)),
      ),
      dilution: (random.total / scatter.s) * slope,
      height,
      p,
      T,
      mass: own[0]?.mass ?? null,
      staticError,
      altitudeCorrection: speedOnly ? Number.NaN : altitudeCorrection(staticError, height),
      bySensor: Object.fromEntries(
        doubt.shifted.map(({ sensor }, k) => [sensor.name, sensorFactor * (sensors[k]?.u ?? 0)] as const),
      ),
    };
  });
}

function tasOfGroup(solution: Solution, legs: readonly number[], speedOnly: boolean): number {
  return meanOf(
    legs.map((i) => (speedOnly ? (solution.legCorrections[i] ?? Number.NaN) : (solution.linear[i]?.tas ?? Number.NaN))),
  );
}
