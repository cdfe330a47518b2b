/** In a turn the airspeed instrument's lag shows against the satellites: one delay for all turns, if it shows at all. */
import { Matrix, solve } from 'ml-matrix';
import { varianceInflation } from '../../numbers/index.ts';
import type { Leg } from './leg.ts';
import { meanOf } from './leg.ts';
import type { Solution } from './solve.ts';

export interface Delay {
  /** airspeed later than the satellites, s */
  seconds: number;
  /** standard uncertainty, s */
  u: number;
}

/** Delays tried, s, in whole samples: between samples interpolation averages noise away and feigns a match. */
const LEAST = -2;
const MOST = 5;
const STEP = 0.4;
/** The parabola through the mismatch is laid over this far either side of the best, s. */
const AROUND = 1.6;
/** A delay must be this many of its standard uncertainties to be believed. */
const SIGNIFICANT = 3;
const CORRELATION_FLOOR = 2;

/**
 * Delay of airspeed against the satellites, from how well wander in one is matched by the other.
 * @param legsAt blocks of turns with the airspeed taken that much later, by delay, s
 * @param solution answer without delay
 * @returns the delay where it is significant and inside the range tried, else null
 * @source least squares over the delay: curvature of the sum of squares gives its error [memory]
 */
export function turnDelay(legsAt: (delay: number) => readonly Leg[], solution: Solution): Delay | null {
  const dt = legsAt(0)[0]?.dt ?? 1;
  const step = dt * Math.max(1, Math.round(STEP / dt));
  const delays: number[] = [];
  for (let k = Math.ceil(LEAST / step); k * step <= MOST; k += 1) delays.push(k * step);
  const tried = delays.map((seconds) => ({ seconds, ...mismatch(legsAt(seconds), solution) }));
  const at = tried.reduce((best, one, i) => (one.mean < (tried[best]?.mean ?? Infinity) ? i : best), 0);
  const best = tried[at];
  const near = tried.filter((one) => Math.abs(one.seconds - (best?.seconds ?? 0)) <= AROUND + 1e-9);
  // The best must lie inside what was tried, with delays to either side of it.
  if (!best || near.length < 5 || at === 0 || at === tried.length - 1) return null;
  const powers = new Matrix(near.map(({ seconds }) => [1, seconds, seconds ** 2]));
  const [, line = 0, bend = 0] = solve(powers, Matrix.columnVector(near.map((one) => one.mean))).to1DArray();
  if (!(bend > 0)) return null;
  const seconds = -line / (2 * bend);
  const u = Math.sqrt((best.mean * best.inflation) / (bend * best.n));
  return Math.abs(seconds) > SIGNIFICANT * u ? { seconds, u } : null;
}

function mismatch(legs: readonly Leg[], solution: Solution): { mean: number; n: number; inflation: number } {
  const wind = solution.fit.windOf;
  const residuals: number[] = [];
  legs.forEach((leg, i) => {
    if (leg.role !== 'turn') return;
    const { north, east, ias } = leg.samples;
    const w = wind[i] ?? { north: 0, east: 0 };
    const slope = solution.linear[i]?.slope ?? 1;
    const r = north.map((n, k) => Math.hypot(n - w.north, (east[k] ?? 0) - w.east) - slope * (ias[k] ?? 0));
    const middle = meanOf(r);
    residuals.push(...r.map((one) => one - middle));
  });
  const mean = residuals.reduce((sum, r) => sum + (r * r) / residuals.length, 0);
  const dt = legs[0]?.dt ?? 1;
  return { mean, n: residuals.length, inflation: varianceInflation(residuals, dt, CORRELATION_FLOOR) };
}
