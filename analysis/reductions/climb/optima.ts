/** Optima of every band as quantities of the result, with their parts and the reason where there is none. */
import { standardDay, trueAirspeed } from '../../air/index.ts';
import { casAtDensityAltitude } from '../../models/index.ts';
import { type Flag, flag } from '../../remarks/index.ts';
import type { Condition, ResultQuantity } from '../../results/index.ts';
import type { Band } from './bands.ts';
import { type BandOptimum, bandOptimum, type OptimumValue } from './optimum.ts';

/** points a curve with three unknowns needs before anything can be said of its top */
const LEAST_POINTS = 4;

export interface BandResult {
  band: Band;
  optimum: BandOptimum | null;
  why: string;
}

/**
 * The curve of each band.
 * @param bands with their points
 * @param constantSpeed true for a constant-speed propeller, boolean
 * @param seed of the draws, text
 * @returns the band's optimum or why there is none
 */
export function solveBands(bands: readonly Band[], constantSpeed: boolean, seed: string): BandResult[] {
  return bands.map((band, i) => {
    const speeds = new Set(band.points.map((point) => Math.round(point.V)));
    if (band.points.length < LEAST_POINTS || speeds.size < LEAST_POINTS) {
      return {
        band,
        optimum: null,
        why: `${speeds.size} speeds were flown in this band; at least ${LEAST_POINTS} are needed`,
      };
    }
    return { band, optimum: bandOptimum(band.points, constantSpeed, `${seed} band ${i}`), why: '' };
  });
}

/** Doubt of calibrated airspeed common to all points, at a speed: standard uncertainty, m/s. */
export type AirspeedDoubt = (cas: number) => number;

/**
 * Best rate speed, best angle speed and best rate of one band.
 * @param solved the band and its curve
 * @param doubt of calibrated airspeed
 * @param share standard uncertainty of every rate from altimeter and thermometer, share of it
 * @param conditions of the reduction as a whole
 * @returns three quantities; null with `not-bracketed` where the optimum is not inside the flown speeds
 * @throws OutOfRange outside the airspeed relations
 */
export function bandQuantities(
  solved: BandResult,
  doubt: AirspeedDoubt,
  share: number,
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
  const speed = (name: string, symbol: string, value: OptimumValue | null, why: string): ResultQuantity => {
    if (!value)
      return { name, symbol, value: null, unit: 'm/s', u95: null, parts: {}, conditions: here, flags: [missing(why)] };
    const toCas = (V: number) => casAtDensityAltitude(V, band.Hd);
    const [cas, low, high] = [toCas(value.value), toCas(value.low), toCas(value.high)];
    const scale = cas / value.value;
    const calibration = 2 * doubt(cas);
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
  const common = rate ? 2 * share * Math.abs(rate.value) : 0;
  const [below, above] = rate
    ? [Math.hypot(rate.value - rate.low, common), Math.hypot(rate.high - rate.value, common)]
    : [0, 0];
  return [
    speed('best-rate-speed', 'Vy', optimum?.Vy ?? null, optimum?.whyNoVy ?? ''),
    speed('best-angle-speed', 'Vx', optimum?.Vx ?? null, optimum?.whyNoVx ?? ''),
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
