/**
 * True airspeed of each leg near a trial correction: its mean over the samples and its slope. The relations are so
 * nearly straight over a knot that a second pass about the first answer leaves nothing.
 */
import { type AirChain, trueAirspeedOf } from './air-chain.ts';
import type { Leg } from './leg.ts';

/** Correction, m/s, of a leg at an indicated airspeed. */
export type Correction = (leg: number, ias: number) => number;

export interface LinearLeg {
  /** mean true airspeed over the samples at the trial correction, m/s */
  tas: number;
  /** change of it with the correction, pure number */
  slope: number;
  /** the trial correction at the leg's mean airspeed, m/s */
  trial: number;
  /** true airspeed of each sample at the trial correction, m/s */
  each: Float64Array;
}

const STEP = 0.5;

/**
 * Legs made straight about a trial correction.
 * @param legs all legs
 * @param trial correction tried
 * @param chain how the instruments are read
 * @returns one a leg
 * @throws OutOfRange when a reading lies outside the relations of air data
 */
export function linearLegs(legs: readonly Leg[], trial: Correction, chain: AirChain): LinearLeg[] {
  return legs.map((leg, i) => {
    const { ias, height, air } = leg.samples;
    if (Number.isNaN(leg.ias)) return { tas: 0, slope: 1, trial: 0, each: new Float64Array(ias.length) };
    const each = ias.map((v, k) => trueAirspeedOf(v, trial(i, v), height[k] ?? NaN, air[k] ?? NaN, chain));
    const middle = trial(i, leg.ias);
    const at = (correction: number) => trueAirspeedOf(leg.ias, correction, mean(height), mean(air), chain);
    return {
      tas: mean(each),
      slope: (at(middle + STEP) - at(middle - STEP)) / (2 * STEP),
      trial: middle,
      each,
    };
  });
}

function mean(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
