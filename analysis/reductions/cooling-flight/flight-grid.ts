/** A flight on one even grid: the hot channels, the air, and what was set at each sample. */
import { plausibleRangeOf, valuesAt } from '../../logs/index.ts';
import { type Grid, gridOver, heldOnGrid, movingMean, onGrid } from '../../segments/index.ts';
import type { FlightChannels, HotPart } from './channels.ts';
import type { PowerMeasure } from './point.ts';

export interface HotSignal {
  quantity: string;
  part: HotPart;
  /** K, NaN where missing */
  values: Float64Array;
  /** the same over 15 s */
  steady: Float64Array;
  /** recording step and readings are those of the channel */
  readings: Float64Array;
}

export interface FlightGrid {
  file: string;
  grid: Grid;
  /** recording time of each sample, s */
  times: Float64Array;
  hot: HotSignal[];
  /** as the probe reads, K */
  air: Float64Array | null;
  ias: Float64Array | null;
  height: Float64Array | null;
  power: Float64Array | null;
  measure: PowerMeasure;
  engineSpeed: Float64Array | null;
  door: Float64Array | null;
}

/** Temperatures are smoothed over this before a threshold is asked for, s. */
const STEADY_SECONDS = 15;
/** Settings are held no longer than this over a recorder's silence, s. */
const HOLD_MOST = 10;

/**
 * The flight on the grid of its first temperature.
 * @param channels of the recording, object
 * @param file name of the first log, text
 * @returns signals on one set of times
 */
export function flightGrid(channels: FlightChannels, file: string): FlightGrid {
  const grid = gridOver(channels.hot[0]?.series.t ?? new Float64Array());
  const times = Float64Array.from({ length: grid.n }, (_, i) => grid.start + i * grid.dt);
  const read = (series: FlightChannels['air']) => {
    if (!series) return null;
    const [low, high] = plausibleRangeOf(series);
    return onGrid(series, grid, (value) => value >= low && value <= high);
  };
  const setting = (series: FlightChannels['air']) => {
    const values = read(series);
    if (!series || !values) return null;
    const hold = Math.min(HOLD_MOST, Math.max(series.holdSeconds, grid.dt));
    // a slower recorder is read between its own samples, a switch-like one is held
    const between = valuesAt(series, times);
    return heldOnGrid(
      values.map((value, i) => (Number.isNaN(value) ? (between[i] ?? Number.NaN) : value)),
      grid,
      hold,
    );
  };
  const fuelFlow = setting(channels.fuelFlow);
  const manifold = setting(channels.manifold);
  const engineSpeed = setting(channels.engineSpeed);
  const product = manifold && engineSpeed ? manifold.map((p, i) => p * (engineSpeed[i] ?? Number.NaN)) : null;
  return {
    file,
    grid,
    times,
    hot: channels.hot.map(({ series, part }) => {
      const values = read(series) ?? new Float64Array(grid.n).fill(Number.NaN);
      return {
        quantity: series.quantity,
        part,
        values,
        steady: movingMean(values, STEADY_SECONDS / grid.dt),
        readings: series.v,
      };
    }),
    air: setting(channels.air),
    ias: setting(channels.airspeed),
    height: setting(channels.height),
    power: fuelFlow ?? product,
    measure: fuelFlow || !product ? 'fuel-flow' : 'manifold-times-speed',
    engineSpeed,
    door: setting(channels.door),
  };
}
