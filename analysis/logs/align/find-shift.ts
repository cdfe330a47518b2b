/** The shift between two even signals: coarse over all lags, fine about the best, scatter from blocks. */
import { coverageFactor } from '../../numbers/index.ts';
import { correlationAt, peakOf } from './correlation.ts';
import { thinned } from './even-signal.ts';

/** Longer signals are searched in groups of steps first. */
const COARSE_STEPS = 3000;
const LEAST_OVERLAP = 0.4;
const LEAST_BLOCKS = 5;
const BLOCK_SECONDS = 180;
const MOST_BLOCKS = 12;
const BLOCK_REACH_SECONDS = 15;
/** A block whose signal hardly moved tells no shift. */
const BLOCK_PEAK = 0.5;
/** Parts that lie less far apart tell no drift, s. */
const DRIFT_SECONDS = 1200;
/** A slope stands out by this many times its 95 % half width: one that chance makes would be taken for true time. */
const DRIFT_CLEAR = 1.5;

export interface FoundShift {
  /** at the first step of b */
  shiftSeconds: number;
  /** s, anywhere in the overlap; infinite when too few blocks tell a shift */
  u95: number;
  /** by how much more b must be moved a second of its own time; null where the blocks show none */
  drift: { perSecond: number; u95: number } | null;
  /** parts of the overlap that told a shift by themselves, count */
  blocks: number;
  peak: number;
  secondPeak: number;
}

/**
 * The shift that makes b fit a.
 * @param a one value a step; NaN where missing
 * @param b one value a step; NaN where missing
 * @param step s
 * @param within lowest and highest shift searched, s
 * @returns the best shift with its uncertainty and the best peak elsewhere, or undefined when nothing overlaps
 * @source normalised cross-correlation, parabola through the peak, scatter of blocks by Student's t [jcgm-100]
 */
export function findShift(
  a: Float64Array,
  b: Float64Array,
  step: number,
  within: readonly [number, number],
): FoundShift | undefined {
  const group = Math.max(1, Math.ceil(Math.max(a.length, b.length) / COARSE_STEPS));
  const [ca, cb] = group === 1 ? [a, b] : [thinned(a, group), thinned(b, group)];
  const least = LEAST_OVERLAP * Math.min(finite(ca), finite(cb));
  const first = Math.max(-cb.length, Math.floor(within[0] / (step * group)));
  const last = Math.min(ca.length, Math.ceil(within[1] / (step * group)));
  if (last < first) return undefined;
  const curve = Float64Array.from({ length: last - first + 1 }, (_, i) => correlationAt(ca, cb, first + i, least));
  const rough = peakOf(curve, first);
  if (!rough) return undefined;
  const centre = Math.round(rough.lag) * group;
  const fine = finePeak(a, b, centre, 2 * group + 1, LEAST_OVERLAP * Math.min(finite(a), finite(b)));
  if (!fine) return undefined;
  const secondPeak = bestElsewhere(curve, Math.round(rough.lag) - first);
  const blocks = blockShifts(a, b, step, Math.round(fine.lag));
  const found = { blocks: blocks.length, peak: fine.value, secondPeak };
  const line = driftLine(blocks, step);
  if (line) return { ...found, ...line };
  return { ...found, shiftSeconds: fine.lag * step, u95: scatterOf(blocks, step), drift: null };
}

function finePeak(
  a: Float64Array,
  b: Float64Array,
  centre: number,
  reach: number,
  least: number,
  from = 0,
  to = b.length,
) {
  const curve = Float64Array.from({ length: 2 * reach + 1 }, (_, i) =>
    correlationAt(a, b, centre - reach + i, least, from, to),
  );
  return peakOf(curve, centre - reach);
}

/** Best local maximum beyond the peak's own width: there the curve has fallen to 1/e of the peak. */
function bestElsewhere(curve: Float64Array, at: number): number {
  const enough = (curve[at] ?? 0) / Math.E;
  let [low, high] = [at, at];
  while (low > 0 && (curve[low] ?? 0) > enough) low -= 1;
  while (high < curve.length - 1 && (curve[high] ?? 0) > enough) high += 1;
  let best = 0;
  for (let i = 0; i < curve.length; i += 1) {
    if (i >= low && i <= high) continue;
    const value = curve[i] ?? Number.NaN;
    if (value > best) best = value;
  }
  return best;
}

/** What one part of the overlap tells by itself. */
interface BlockShift {
  /** middle of the part, s of b's own time */
  at: number;
  shift: number;
}

function blockShifts(a: Float64Array, b: Float64Array, step: number, lag: number): BlockShift[] {
  const from = Math.max(0, -lag);
  const to = Math.min(b.length, a.length - lag);
  const wanted = Math.floor(((to - from) * step) / BLOCK_SECONDS);
  const blocks = Math.min(MOST_BLOCKS, Math.max(LEAST_BLOCKS, wanted));
  const borders = equalShares(b, from, to, blocks);
  const reach = Math.max(2, Math.round(BLOCK_REACH_SECONDS / step));
  const found: BlockShift[] = [];
  for (let k = 0; k < blocks; k += 1) {
    const [start, end] = [borders[k] ?? from, borders[k + 1] ?? to];
    const peak = finePeak(a, b, lag, reach, 0.5 * (end - start), start, end);
    if (peak && !peak.atEnd && peak.value >= BLOCK_PEAK) {
      found.push({ at: 0.5 * (start + end) * step, shift: peak.lag * step });
    }
  }
  return found;
}

const leastU95 = (step: number) => (2 * step) / Math.sqrt(12);

function scatterOf(blocks: readonly BlockShift[], step: number): number {
  const m = blocks.length;
  if (m < 3) return Number.POSITIVE_INFINITY;
  const mean = blocks.reduce((sum, one) => sum + one.shift, 0) / m;
  const scatter = Math.sqrt(blocks.reduce((sum, one) => sum + (one.shift - mean) ** 2, 0) / (m - 1));
  return Math.max(leastU95(step), (coverageFactor(m - 1) * scatter) / Math.sqrt(m));
}

/** A line through the shifts of the parts, where they are many, far apart and agree with it: two clocks that part. */
function driftLine(blocks: readonly BlockShift[], step: number) {
  const m = blocks.length;
  const [first, last] = [blocks[0], blocks.at(-1)];
  if (m < LEAST_BLOCKS || !first || !last || last.at - first.at < DRIFT_SECONDS) return null;
  const middle = blocks.reduce((sum, one) => sum + one.at, 0) / m;
  const mean = blocks.reduce((sum, one) => sum + one.shift, 0) / m;
  const spread = blocks.reduce((sum, one) => sum + (one.at - middle) ** 2, 0);
  const slope = blocks.reduce((sum, one) => sum + (one.at - middle) * (one.shift - mean), 0) / spread;
  const left = blocks.reduce((sum, one) => sum + (one.shift - mean - slope * (one.at - middle)) ** 2, 0);
  // The shift of a part is no finer than a part of a step.
  const scatter = Math.max(Math.sqrt(left / (m - 2)), leastU95(step) / 2);
  const k = coverageFactor(m - 2);
  const u95 = (k * scatter) / Math.sqrt(spread);
  if (!(Math.abs(slope) > DRIFT_CLEAR * u95)) return null;
  const farthest = Math.max(middle, Math.abs(last.at - middle), Math.abs(first.at - middle));
  return {
    shiftSeconds: mean - slope * middle,
    u95: Math.max(leastU95(step), k * scatter * Math.sqrt(1 / m + farthest ** 2 / spread)),
    drift: { perSecond: slope, u95 },
  };
}

/** Borders of blocks that hold equal shares of the signal's energy: a block in which nothing happens tells nothing. */
function equalShares(v: Float64Array, from: number, to: number, blocks: number): number[] {
  const energy = (i: number) => {
    const value = v[i] ?? Number.NaN;
    return Number.isFinite(value) ? value * value : 0;
  };
  let total = 0;
  for (let i = from; i < to; i += 1) total += energy(i);
  const borders = [from];
  let sum = 0;
  for (let i = from; i < to && borders.length < blocks; i += 1) {
    sum += energy(i);
    if (sum >= (total * borders.length) / blocks) borders.push(i + 1);
  }
  return [...borders, to];
}

function finite(v: Float64Array): number {
  let count = 0;
  for (const value of v) if (Number.isFinite(value)) count += 1;
  return count;
}
