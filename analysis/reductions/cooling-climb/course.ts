/** One temperature along one climb: smoothed, with the doubt of each sample, beside the air and height it was reached in. */
import type { CooledPart } from '../../models/index.ts';
import { localParabola, movingMedian, scatterWithin, stepEffect } from '../../numbers/index.ts';
import type { Climb } from './climbs.ts';
import type { HotTrace, Trace } from './trace.ts';

/** The way a climb went, by sample. */
export interface Way {
  label: string;
  file: string;
  /** recording time, s */
  t: Float64Array;
  /** pressure altitude, m */
  height: Float64Array;
  /** static outside air, K, its rate, K/s, and where it was read */
  air: Float64Array;
  airRate: Float64Array;
  airRead: Uint8Array;
  /** radiator inlet air, K */
  inlet: Float64Array | null;
  /** K for a unit of recovery factor */
  ram: Float64Array;
}

export interface Course {
  way: Way;
  quantity: string;
  part: CooledPart;
  /** smoothed temperature, K, NaN where it was not read */
  T: Float64Array;
  /** K/s and K/s2 */
  rate: Float64Array;
  bend: Float64Array;
  /** standard uncertainty of T from noise, K, and its degrees of freedom */
  noiseU: Float64Array;
  noiseNu: number;
  /** standard uncertainty of T from an undithered recording step, K */
  stepU: Float64Array;
  /** standard uncertainty of what may have gone unseen between readings far apart, K */
  unseenU: Float64Array;
  /** recording step, K */
  step: number;
}

/** Spikes are taken out by a median over this, s; a top keeps its height under a parabola over that, s. */
export const MEDIAN_SECONDS = 10;
export const PARABOLA_SECONDS = 60;
/** Least credible correlation time of a temperature, s. */
const CORRELATION_FLOOR = 10;
/** A smoothed value stands only with readings this near, s. */
const NEAR_SECONDS = 15;

/**
 * The way of a climb found in a log.
 * @param trace the recording on its grid, object
 * @param climb which part of it, object
 * @returns the way by sample
 */
export function wayOf(trace: Trace, climb: Climb): Way {
  const { grid, air, file } = trace;
  const part = (values: Float64Array) => values.slice(climb.from, climb.to + 1);
  return {
    label: climb.label,
    file,
    t: Float64Array.from({ length: climb.to - climb.from + 1 }, (_, i) => grid.start + (climb.from + i) * grid.dt),
    height: part(trace.height),
    air: part(air.outside),
    airRate: part(air.rate),
    airRead: air.read.slice(climb.from, climb.to + 1),
    inlet: air.inlet ? part(air.inlet) : null,
    ram: part(air.ram),
  };
}

/**
 * A temperature along a climb. Only readings of the climb itself enter: before and after it the engine was set otherwise.
 * @param way the climb's own, object
 * @param trace the recording on its grid, object
 * @param climb which part of it, object
 * @param hot which temperature, object
 * @returns the course, or null where it was hardly read
 */
export function courseOf(way: Way, trace: Trace, climb: Climb, hot: HotTrace): Course | null {
  const { dt } = trace.grid;
  const values = hot.values.slice(climb.from, climb.to + 1);
  const there = values.reduce((count, value) => count + (Number.isNaN(value) ? 0 : 1), 0);
  if (there < Math.max(8, values.length / 2)) return null;
  const steady = movingMedian(values, Math.max(1, Math.round(MEDIAN_SECONDS / dt)));
  const local = localParabola(steady, dt, Math.max(PARABOLA_SECONDS, 6 * dt));
  const T = nearReadings(values, local.value, Math.ceil(NEAR_SECONDS / dt));
  const away = values.map((value, i) => value - (T[i] ?? Number.NaN)).filter((value) => Number.isFinite(value));
  const scatter = scatterWithin(away, dt, CORRELATION_FLOOR, 3);
  const half = Math.round(PARABOLA_SECONDS / 2 / dt);
  const effects = values.map((_, i) => spread(values, i - half, i + half)).map((one) => stepEffect(one, hot.step).bias);
  return {
    way,
    quantity: hot.quantity,
    part: hot.part,
    T,
    rate: local.slope,
    bend: local.bend,
    noiseU: local.leverage.map((one) => scatter.s * Math.sqrt(Math.min(1, one * scatter.inflation))),
    noiseNu: scatter.nu,
    stepU: effects,
    unseenU: new Float64Array(values.length),
    step: hot.step,
  };
}

function nearReadings(values: Float64Array, smooth: Float64Array, reach: number): Float64Array {
  const near = new Uint8Array(values.length);
  values.forEach((value, i) => {
    if (Number.isNaN(value)) return;
    near.fill(1, Math.max(0, i - reach), Math.min(values.length, i + reach + 1));
  });
  return smooth.map((value, i) => (near[i] ? value : Number.NaN));
}

function spread(values: Float64Array, from: number, to: number): number {
  let [n, sum, squares] = [0, 0, 0];
  let about = Number.NaN;
  for (let i = Math.max(0, from); i <= Math.min(values.length - 1, to); i += 1) {
    const value = values[i] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    if (Number.isNaN(about)) about = value;
    n += 1;
    sum += value - about;
    squares += (value - about) ** 2;
  }
  return n > 1 ? Math.sqrt(Math.max(0, squares / n - (sum / n) ** 2)) : 0;
}
