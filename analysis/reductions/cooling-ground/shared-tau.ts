/**
 * One airplane's heat capacity is one: where a condition alone cannot tell its time constant, the others of the run
 * bound it. Fan, door and speed change the conductance, so the bound is wide.
 */

import type { TauPrior } from '../../models/index.ts';
import { median } from '../../numbers/index.ts';
import type { Measured } from './measure.ts';

/** Time constants of one airplane differ by this factor (one standard deviation); common practice, no source. */
const FACTOR = 2;
/** Where no condition tells its own: loops, oil systems and heads of light airplanes; common practice, no source. */
const USUAL: TauPrior = { tau: 300, factor: 2.5 };
/** A time constant is told by its own record when its kept ends lie within this factor. */
const TOLD = 3;

/** Whether a record tells its own time constant. */
export function tellsItsTau({ fit, noCurve }: Measured): boolean {
  return fit !== null && !noCurve && fit.tauHigh !== null && fit.tauHigh < TOLD * fit.tauLow;
}

/**
 * What the other points of a run say of a time constant.
 * @param measured points of one temperature, list
 * @returns the middle of those told; where none is, what is usual
 */
export function sharedTau(measured: readonly Measured[]): TauPrior {
  const told = measured.filter(tellsItsTau).map((one) => Math.log(one.fit?.tau ?? 1));
  return told.length === 0 ? USUAL : { tau: Math.exp(median(told)), factor: FACTOR };
}
