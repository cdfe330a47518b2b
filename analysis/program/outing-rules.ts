/** Figures the packing rests on. All are common practice, no source; the person's own rules in the plan go before them. */
import { toSi } from '../units/index.ts';

/** take-off, transit, pattern and landing of one flight, min */
export const OVERHEAD_MINUTES = 18;
/** height a flight reaches inside that overhead, m above ground */
export const USUAL_HEIGHT = toSi(5000, 'ft');
/** climb beyond it, m/s: slow on purpose, so that no flight is planned too tight */
export const PLANNING_CLIMB_RATE = toSi(500, 'ft/min');
/** longest flight planned in phase one, min: one person, one seat, full attention */
export const LONGEST_FLIGHT_MINUTES = 100;
/** longest sitting on the ground, min, by stage kind */
export const LONGEST_SESSION_MINUTES = { shop: 240, running: 180, paper: 480 } as const;
/** share of the take-off burn taken for everything but the climb: above any cruise setting of a test */
export const BURN_SHARE = 0.75;
/** reserve where the description states none, s */
export const USUAL_RESERVE = toSi(60, 'min');

const SECONDS_PER_MINUTE = toSi(1, 'min');

/**
 * Minutes of a flight beside its time on condition.
 * @param height greatest height asked for, m above ground
 * @returns minutes
 * @source common practice [practice]
 */
export function overheadMinutes(height: number): number {
  return OVERHEAD_MINUTES + climbMinutes(Math.max(0, height - USUAL_HEIGHT));
}

/**
 * Minutes to climb a height at the planning rate.
 * @param height m
 * @returns minutes
 * @source common practice [practice]
 */
export function climbMinutes(height: number): number {
  return height / PLANNING_CLIMB_RATE / SECONDS_PER_MINUTE;
}
