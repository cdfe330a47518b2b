/**
 * One lump of coolant, metal and oil that is heated by the engine and cooled by the air: dT/dt = (T_air + D - T)/tau.
 *
 * D, the inlet temperature difference at equilibrium, is what carries over from day to day; tau is heat capacity over
 * conductance. Everything that takes its heat more slowly (block, oil, duct) is invisible in a short trace: see the
 * slow-node part of the reductions that use this.
 */
import { OutOfRange } from '../remarks/index.ts';

/**
 * What the air alone does to the lump: response to the air's course from zero, exact for air linear between samples.
 * @param air air temperature, evenly spaced, K
 * @param dt spacing, s
 * @param tau time constant, above 0, s
 * @param out where to write it, K, as long as air; made where left out
 * @returns A(t) with dA/dt = (air - A)/tau and A(0) = 0, K
 * @throws OutOfRange when tau or dt is not above 0
 * @source exact solution of the linear first-order equation for a ramp input [memory]
 */
export function airResponse(
  air: ArrayLike<number>,
  dt: number,
  tau: number,
  out: Float64Array = new Float64Array(air.length),
): Float64Array {
  requirePositive('time constant', tau);
  requirePositive('spacing', dt);
  const keep = Math.exp(-dt / tau);
  out[0] = 0;
  let a = 0;
  for (let i = 1; i < air.length; i += 1) {
    const before = air[i - 1] ?? 0;
    const now = air[i] ?? 0;
    const lagging = ((now - before) / dt) * tau; // how far a steady ramp runs ahead of its response
    a = (a - before + lagging) * keep + now - lagging;
    out[i] = a;
  }
  return out;
}

/**
 * Temperature after a time in constant conditions.
 * @param start temperature at time 0, K
 * @param equilibrium where it settles, K
 * @param tau time constant, above 0, s
 * @param time since the start, 0 or more, s
 * @returns temperature, K
 * @throws OutOfRange when tau is not above 0
 * @source solution of the first-order heat balance [memory]
 */
export function temperatureAfter(start: number, equilibrium: number, tau: number, time: number): number {
  requirePositive('time constant', tau);
  return equilibrium + (start - equilibrium) * Math.exp(-time / tau);
}

/**
 * Time for a heating lump to reach a limit.
 * @param start temperature at time 0, K
 * @param equilibrium where it settles, K
 * @param tau time constant, above 0, s
 * @param limit temperature not to be passed, K
 * @returns s; 0 when it starts at or over the limit, Infinity when it settles at or below it
 * @throws OutOfRange when tau is not above 0
 * @source t = tau ln((T_eq - T_start)/(T_eq - L)) [memory]
 */
export function timeToReach(start: number, equilibrium: number, tau: number, limit: number): number {
  requirePositive('time constant', tau);
  if (start >= limit) return 0;
  if (equilibrium <= limit) return Number.POSITIVE_INFINITY;
  return tau * Math.log((equilibrium - start) / (equilibrium - limit));
}

/**
 * What is still to come when a trace looks steady: a small rate times a long time constant is not small.
 * @param rate of temperature, K/s
 * @param tau time constant, above 0, s
 * @returns rise left to equilibrium, K
 * @throws OutOfRange when tau is not above 0
 * @source T_eq - T = tau dT/dt of the same heat balance [memory]
 */
export function remainingRise(rate: number, tau: number): number {
  requirePositive('time constant', tau);
  return rate * tau;
}

/** One-sided allowance on the hot side of a fitted temperature; common practice, no source; K and share of the rise. */
const LEAST_ALLOWANCE = 3;
const SHARE_OF_RISE = 0.1;

/**
 * What block, oil and duct, which take their heat more slowly, may still add to a fitted temperature.
 * @param rise of the temperature in the record, K
 * @returns K to add to the hot end
 * @source the larger of 3 K and a tenth of the rise [practice]; reaches 2 to 3 K of slow part, not the worst 7 K [simulation]
 */
export function slowPartAllowance(rise: number): number {
  return Math.max(LEAST_ALLOWANCE, SHARE_OF_RISE * rise);
}

function requirePositive(what: string, value: number): void {
  if (!(value > 0)) throw new OutOfRange(what, value, 'above 0 s');
}
