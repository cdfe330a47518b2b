/** The list of reductions: the only way in for pages, command, API and handbook. */
import { airspeed } from './airspeed/index.ts';
import { climb } from './climb/index.ts';
import { coolingClimb } from './cooling-climb/index.ts';
import { coolingFlight } from './cooling-flight/index.ts';
import { coolingGround } from './cooling-ground/index.ts';
import type { Reduction } from './reduction.ts';
import { weightBalance } from './weight-balance/index.ts';

export const REDUCTIONS: readonly Reduction[] = [
  airspeed,
  climb,
  coolingClimb,
  coolingFlight,
  coolingGround,
  weightBalance,
];

/**
 * The reduction of a kind.
 * @param kind name as in the command, text
 * @returns the reduction, or undefined
 */
export function reductionOf(kind: string): Reduction | undefined {
  return REDUCTIONS.find((reduction) => reduction.kind === kind);
}
