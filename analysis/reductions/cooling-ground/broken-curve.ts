/** Whether one heating curve describes a record at all: a fan switched unseen or a cycling valve does not fit one. */
import { type Blocks, blocksOf, type HeatingFit, type HeldRecord, solveAtTau } from '../../models/index.ts';
import { quantile } from '../../numbers/index.ts';

export interface Misfit {
  /** half the range of the slow residuals, K */
  swing: number;
  /** the temperature swung up and down about the curve this many times by more than its swing allows */
  swings: number;
  /** two curves fit far better than one: the break, s from the start of the record; null where they do not */
  breakAt: number | null;
}

/** Slow residuals under this are gusts and the recorder's step, K. */
const QUIET = 0.4;
/** Residuals that swing by more than this leave no one curve, K; gusts of a test day stay under it. */
export const WILD = 2;
/** Two curves must leave less than this share of one curve's misfit. */
const FAR_BETTER = 0.3;
const SLOW_SECONDS = 20;
const TAUS = [50, 90, 160, 280, 500, 900];
const PLACES = 12;

/**
 * How a record departs from its curve.
 * @param record the held condition, object
 * @param fit its curve, object
 * @returns swing, swings and break
 * @throws OutOfRange never: all time constants tried are above 0
 */
export function misfitOf(record: HeldRecord, fit: HeatingFit): Misfit {
  const slow = slowPart(fit.residuals, Math.max(1, Math.round(SLOW_SECONDS / record.dt)));
  const swing = (quantile(slow, 0.95) - quantile(slow, 0.05)) / 2;
  return { swing, swings: crossings(slow, WILD / 2), breakAt: swing > QUIET ? breakOf(record, fit.tau) : null };
}

function slowPart(residuals: Float64Array, size: number): Float64Array {
  return Float64Array.from({ length: Math.max(1, Math.floor(residuals.length / size)) }, (_, block) => {
    const part = residuals.subarray(block * size, (block + 1) * size);
    return part.reduce((sum, value) => sum + value, 0) / Math.max(1, part.length);
  });
}

function crossings(values: Float64Array, band: number): number {
  let side = 0;
  let count = 0;
  for (const value of values) {
    if (Math.abs(value) < band || Math.sign(value) === side) continue;
    if (side !== 0) count += 1;
    side = Math.sign(value);
  }
  return count;
}

function breakOf(record: HeldRecord, tau: number): number | null {
  const blocks = blocksOf(record);
  const n = blocks.hot.length;
  const one = solveAtTau(blocks, tau).rss;
  let [least, place] = [Number.POSITIVE_INFINITY, 0];
  for (let k = 1; k < PLACES; k += 1) {
    const at = Math.round((n * k) / PLACES);
    const two = misfitOfPart(blocks, 0, at) + misfitOfPart(blocks, at, n);
    if (two < least) [least, place] = [two, at];
  }
  return least < FAR_BETTER * one ? place * blocks.seconds : null;
}

function misfitOfPart(blocks: Blocks, from: number, to: number): number {
  const part = { ...blocks, hot: blocks.hot.subarray(from, to), air: blocks.air.subarray(from, to) };
  return Math.min(...TAUS.map((tau) => solveAtTau(part, tau).rss).filter(Number.isFinite));
}
