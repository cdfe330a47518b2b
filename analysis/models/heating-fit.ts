/**
 * One held condition: where the temperature settles and how fast, by profile likelihood of the forced first-order
 * heat balance. Symmetric intervals from a covariance are wrong below two time constants; here every time constant is
 * tried and every (tau, D) kept whose misfit the noise allows.
 */
import { coverageFactor, stepEffect } from '../numbers/index.ts';
import { besideRounded, residualsOf, type SolvedAtTau } from './heating-at-tau.ts';
import { type Blocks, blocksOf, type HeldRecord } from './heating-blocks.ts';
import { type NoisePower, noisePower } from './heating-noise.ts';
import {
  bestOf,
  costOf,
  keptEnds,
  type ProfilePoint,
  pointOf,
  type TauPrior,
  triedBetween,
} from './heating-profile.ts';

export interface HeatingFit {
  tau: number;
  tauLow: number;
  /** null: the longest time constant tried still fits */
  tauHigh: number | null;
  /** mean air of the record; 0 where no air was logged, and excess is then absolute */
  air: number;
  excess: number;
  excessLow: number;
  excessHigh: number;
  start: number;
  /** scatter of a sample about the curve */
  scatter: number;
  nu: number;
  /** standard uncertainty of an undithered recording step */
  stepBias: number;
  profile: ProfilePoint[];
  /** K, one a sample with a reading */
  residuals: Float64Array;
  /** the same record with something known of its time constant */
  again(prior: TauPrior): HeatingFit;
}

/** No coolant loop, oil system or head of a light airplane is faster or slower; common practice, no source. */
const FASTEST = 40;
const SLOWEST = 3600;
/** Time constants are tried up to this many lengths of the record. */
const LENGTHS = 20;
const TRIED = 40;
const UNKNOWNS = 3;

/**
 * Fit one record.
 * @param record evenly spaced temperatures and air of one held condition, object
 * @returns the fit, or null where the record holds too few readings
 * @throws OutOfRange never on a record longer than nothing
 * @source profile likelihood over log tau, kept where the misfit allows; coverage [simulation]
 */
export function fitHeating(record: HeldRecord): HeatingFit | null {
  const blocks = blocksOf(record);
  const readings = blocks.hot.reduce((count, value) => count + (Number.isNaN(value) ? 0 : 1), 0);
  return readings < 2 * UNKNOWNS ? null : concluded(prepared(record, blocks), null);
}

/**
 * Half-width of what noise alone leaves of D.
 * @param fit a fitted record, object
 * @returns the larger side of the kept set, K
 * @source profile likelihood interval [memory]
 */
export function noiseHalf(fit: HeatingFit): number {
  return Math.max(fit.excessHigh - fit.excess, fit.excess - fit.excessLow);
}

/** What does not depend on anything known beforehand: coarse trials and the noise about the best of them. */
interface Prepared {
  blocks: Blocks;
  coarse: SolvedAtTau[];
  slowest: number;
  closest: SolvedAtTau;
  residuals: Float64Array;
  noise: NoisePower;
  stepBias: number;
}

function prepared(record: HeldRecord, blocks: Blocks): Prepared {
  const length = record.dt * record.hot.length;
  const slowest = Math.max(length, Math.min(LENGTHS * length, SLOWEST));
  const coarse = triedBetween(blocks, FASTEST, slowest, TRIED);
  const closest = bestOf(blocks, coarse, (one) => one.rss);
  const scale = { begin: blocks.times[0] ?? 0, air: blocks.air[0] ?? 0, least: 0, error: 1, cost: () => 0 };
  const residuals = residualsOf(record, pointOf(closest, scale));
  const effect = stepEffect(tailScatter(record.hot), record.step);
  const plain = noisePower(residuals, record.dt, UNKNOWNS, effect.perSample / record.perSample);
  // On a coarse step the sawtooth of rounding looks like gusts: beside the curve as it would have been recorded it is
  // gone, and what is left stands above rounding's own variance.
  const least = record.step ** 2 / 12 / record.perSample;
  const asRecorded = noisePower(besideRounded(record, residuals), record.dt, UNKNOWNS, least);
  const noise = record.step > 0 && asRecorded.power < plain.power ? asRecorded : plain;
  return { blocks, coarse, slowest, closest, residuals, noise, stepBias: effect.bias };
}

function concluded(known: Prepared, prior: TauPrior | null): HeatingFit {
  const { blocks, coarse, slowest, noise } = known;
  const error = Math.max(1e-6, Math.sqrt(noise.power / blocks.seconds));
  const k = coverageFactor(noise.nu);
  // What is known beforehand has no few degrees of freedom: it keeps its own 95 % under the larger factor of the noise.
  const firm = k / coverageFactor(Number.POSITIVE_INFINITY);
  const cost = (one: SolvedAtTau) => costOf(one, error, prior, firm);
  const best = prior === null ? known.closest : bestOf(blocks, coarse, cost);
  const scale = { begin: blocks.times[0] ?? 0, air: blocks.air[0] ?? 0, least: cost(best), error, cost };
  const centre = pointOf(best, scale);
  // What the noise allows, tried again closely: sharp and blunt records are resolved alike.
  const inside = coarse.filter((one) => cost(one) - scale.least <= k * k).map((one) => one.tau);
  const step = (slowest / FASTEST) ** (1 / (TRIED - 1));
  const [low, high] = [Math.min(best.tau, ...inside) / step, Math.max(best.tau, ...inside) * step];
  const fine = triedBetween(blocks, Math.max(FASTEST, low), Math.min(slowest, high), TRIED);
  const profile = fine.map((one) => pointOf(one, scale));
  const ends = keptEnds([...profile, centre], k);
  return {
    tau: best.tau,
    excess: centre.excess,
    start: centre.start,
    ...ends,
    tauHigh: ends.tauHigh < slowest * 0.999 ? ends.tauHigh : null,
    air: blocks.air.reduce((sum, value) => sum + value, 0) / blocks.air.length,
    scatter: noise.scatter,
    nu: noise.nu,
    stepBias: known.stepBias,
    profile,
    residuals: known.residuals,
    again: (other) => concluded(known, other),
  };
}

/** Scatter of the last third, its slope included: what dithers the recording step where it matters most. */
function tailScatter(hot: Float64Array): number {
  const tail = hot.subarray(Math.floor((2 * hot.length) / 3)).filter((value) => !Number.isNaN(value));
  const mean = tail.reduce((sum, value) => sum + value, 0) / tail.length;
  return Math.sqrt(tail.reduce((sum, value) => sum + (value - mean) ** 2, 0) / tail.length);
}
