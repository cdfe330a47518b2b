/** Optima of every band as quantities of the result, with their parts and the reason where there is none. */
import { standardDay, trueAirspeed } from '../../air/index.ts';
import { casAtDensityAltitude } from '../../models/index.ts';
import { type Flag, flag } from '../../remarks/index.ts';
import type { Condition, ResultQuantity } from '../../results/index.ts';
import type { Band } from './bands.ts';
import { type BandOptimum, bandOptimum, type Optima, type OptimumValue, optimaOf } from './optimum.ts';

/** points a curve with three unknowns needs before anything can be said of its top */
const LEAST_POINTS = 4;

export interface BandResult {
  band: Band;
  optimum: BandOptimum | null;
  why: string;
  /** standard uncertainties from what is off in all climbs at once, m/s */
  common: CommonParts;
  /** best rate with each of those errors in it, m/s, in one order for all bands */
  rateWith: number[];
}

/** What a band's optima are uncertain by beyond the scatter between climbs, m/s. */
export interface CommonParts {
  Vy: number;
  Vx: number;
  rate: number;
}

/**
 * The curve of each band.
 * @param bands with their points
 * @param constantSpeed true for a constant-speed propeller, boolean
 * @param seed of the draws, text
 * @param shifted the same bands once more for each error common to all climbs, with that error in their points
 * @returns the band's optimum or why there is none
 */
export function solveBands(
  bands: readonly Band[],
  constantSpeed: boolean,
  seed: string,
  shifted: readonly (readonly Band[])[] = [],
): BandResult[] {
  return bands.map((band, i) => {
    const speeds = new Set(band.points.map((point) => Math.round(point.V)));
    if (band.points.length < LEAST_POINTS || speeds.size < LEAST_POINTS) {
      return {
        band,
        optimum: null,
        why: `${speeds.size} speeds were flown in this band; at least ${LEAST_POINTS} are needed`,
        common: { Vy: 0, Vx: 0, rate: 0 },
        rateWith: [],
      };
    }
    const optimum = bandOptimum(band.points, constantSpeed, `${seed} band ${i}`, band.pairs);
    const best = optimaOf(band.points, optimum.form);
    const others = shifted.map((one) => optimaOf(one[i]?.points ?? band.points, optimum.form));
    const spread = (of: (one: Optima) => number) => Math.hypot(...others.map((one) => of(one) - of(best)));
    const common = { Vy: spread((one) => one.Vy), Vx: spread((one) => one.Vx), rate: spread((one) => one.rate) };
    return { band, optimum, why: '', common, rateWith: others.map((one) => one.rate) };
  });
}

/** Doubt of calibrated airspeed common to all points, at a speed: standard uncertainty, m/s. */
export type AirspeedDoubt = (cas: number) => number;

/**
 * Best rate speed, best angle speed and best rate of one band.
 * @param solved the band and its curve
 * @param doubt of calibrated airspeed
 * @param conditions of the reduction as a whole
 * @returns three quantities; null with `not-bracketed` where the optimum is not inside the flown speeds
 * @throws OutOfRange outside the airspeed relations
 */
export function bandQuantities(
  solved: BandResult,
  doubt: AirspeedDoubt,
  conditions: Record<string, Condition>,
): ResultQuantity[] {
  const { band, optimum } = solved;
  const here: Record<string, Condition> = {
    ...conditions,
    'density-altitude': { value: band.Hd, unit: 'm' },
    scale: 'calibrated airspeed, standard day at this density altitude',
    ...(optimum ? { curve: optimum.form } : {}),
  };
  const flags = optimum?.scatter.assumed
    ? [flag('assumed-repeatability', 'scatter between climbs rests partly on an assumed 0.15 m/s')]
    : [];
  const missing = (why: string): Flag => flag(solved.why === '' ? 'not-bracketed' : 'not-resolved', solved.why || why);
  const speed = (name: string, symbol: string, value: OptimumValue | null, why: string, u: number): ResultQuantity => {
    if (!value)
      return { name, symbol, value: null, unit: 'm/s', u95: null, parts: {}, conditions: here, flags: [missing(why)] };
    const toCas = (V: number) => casAtDensityAltitude(V, band.Hd);
    const [cas, low, high] = [toCas(value.value), toCas(value.low), toCas(value.high)];
    const scale = cas / value.value;
    const calibration = 2 * Math.hypot(doubt(cas), u * scale);
    const parts = { repeatability: value.repeatability * scale, fit: value.fit * scale, calibration };
    const ends: [number, number] = [
      cas - Math.hypot(cas - low, calibration),
      cas + Math.hypot(high - cas, calibration),
    ];
    return {
      name,
      symbol,
      value: cas,
      unit: 'm/s',
      u95: Math.max(cas - ends[0], ends[1] - cas),
      interval: ends,
      parts,
      conditions: here,
      flags,
    };
  };
  const rate = optimum?.bestRate ?? null;
  const common = 2 * solved.common.rate;
  const [below, above] = rate
    ? [Math.hypot(rate.value - rate.low, common), Math.hypot(rate.high - rate.value, common)]
    : [0, 0];
  return [
    speed('best-rate-speed', 'Vy', optimum?.Vy ?? null, optimum?.whyNoVy ?? '', solved.common.Vy),
    speed('best-angle-speed', 'Vx', optimum?.Vx ?? null, optimum?.whyNoVx ?? '', solved.common.Vx),
    rate
      ? {
          name: 'best-rate',
          symbol: 'RC',
          value: rate.value,
          unit: 'm/s',
          u95: Math.max(below, above),
          interval: [rate.value - below, rate.value + above],
          parts: { repeatability: rate.repeatability, fit: rate.fit, calibration: common },
          conditions: here,
          flags,
        }
      : {
          name: 'best-rate',
          symbol: 'RC',
          value: null,
          unit: 'm/s',
          u95: null,
          parts: {},
          conditions: here,
          flags: [missing(optimum?.whyNoVy ?? '')],
        },
  ];
}

/**
 * True airspeed of a calibrated one on the standard day at a density altitude.
 * @param cas calibrated airspeed, m/s
 * @param Hd density altitude, m
 * @returns true airspeed, m/s
 * @throws OutOfRange outside the relations
 */
export function tasAtDensityAltitude(cas: number, Hd: number): number {
  const day = standardDay(Hd);
  return trueAirspeed(cas, day.p, day.T);
}
