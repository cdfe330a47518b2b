/** A recording on one even grid: temperatures, static air, height, speed, and what was set at each sample. */
import type { Airplane } from '../../airplane/index.ts';
import { evidentRangeOf, plausibleRangeOf, type Recording, type Series, valuesAt } from '../../logs/index.ts';
import { type PartTrace, partTrace } from '../../models/index.ts';
import { movingMedian } from '../../numbers/index.ts';
import type { Flag } from '../../remarks/index.ts';
import { filledWithNearest, type Grid, gridOver, heldOnGrid, movingMean, onGrid } from '../../segments/index.ts';
import { type Air, airAlong } from './air.ts';
import type { CoolingChannels } from './channels.ts';
import type { CoolingClimbOptions } from './input.ts';

/** A part whose temperature a climb follows. */
export type HotTrace = PartTrace;

export interface Trace {
  /** what the times count from */
  file: string;
  grid: Grid;
  hot: HotTrace[];
  air: Air;
  /** pressure altitude, m, smoothed and without gaps */
  height: Float64Array;
  /** indicated airspeed, m/s, smoothed; null where not logged */
  airspeed: Float64Array | null;
  /** engine or propeller speed, 1/s */
  speed: Float64Array | null;
  manifold: Float64Array | null;
  fuelFlow: Float64Array | null;
  door: Float64Array | null;
  fan: Float64Array | null;
  gear: Float64Array | null;
  flap: Float64Array | null;
}

/** Height and airspeed are smoothed over this, s. */
const SLOW_SECONDS = 10;
/** Settings are held no longer than this over a recorder's silence, s. */
const HOLD_MOST = 10;

/**
 * The recording on the grid of its first temperature.
 * @param recording aligned logs, object
 * @param channels its channels, object
 * @param airplane the description, or undefined
 * @param options what a person stated, object
 * @returns the trace, with remarks on what was left out or assumed
 */
export function traceOf(
  recording: Recording,
  channels: CoolingChannels,
  airplane: Airplane | undefined,
  options: CoolingClimbOptions,
): { trace: Trace; flags: Flag[] } {
  const grid = gridOver(channels.hot[0]?.series.t ?? new Float64Array());
  const setting = (series: Series | null) => {
    if (!series) return null;
    const read = plausibleOnGrid(series, grid);
    return heldOnGrid(read, grid, Math.min(HOLD_MOST, Math.max(series.holdSeconds, grid.dt)));
  };
  const slow = (series: Series | null) => {
    if (!series) return null;
    return filledWithNearest(movingMean(movingMedian(plausibleOnGrid(series, grid), width(grid)), width(grid)));
  };
  const height = slow(channels.height) ?? new Float64Array(grid.n);
  const airspeed = slow(channels.airspeed);
  const hot = channels.hot.map((channel) => partTrace(channel, evidentRangeOf(channel.series), grid, recording));
  const air = airAlong({
    grid,
    probe: channels.outside ? plausibleOnGrid(channels.outside, grid) : null,
    inlet: channels.inlet ? plausibleOnGrid(channels.inlet, grid) : null,
    height,
    airspeed,
    airplane,
    byHeight: options.airByHeight,
  });
  return {
    trace: {
      file: recording.tables[0]?.file ?? '',
      grid,
      hot: hot.map((one) => one.trace),
      air: air.air,
      height,
      airspeed,
      speed: setting(channels.speed),
      manifold: setting(channels.manifold),
      fuelFlow: setting(channels.fuelFlow),
      door: setting(channels.door),
      fan: setting(channels.fan),
      gear: setting(channels.gear),
      flap: setting(channels.flap),
    },
    flags: [...air.flags, ...hot.flatMap((one) => one.flags)],
  };
}

const width = (grid: Grid) => Math.max(1, Math.round(SLOW_SECONDS / grid.dt));

// A recorder slower than the grid is read between its rows, one faster is averaged.
function plausibleOnGrid(series: Series, grid: Grid): Float64Array {
  const [low, high] = plausibleRangeOf(series);
  const read = onGrid(series, grid, (value) => value >= low && value <= high);
  const between = valuesAt(
    { ...series, v: series.v.map((value) => (value >= low && value <= high ? value : Number.NaN)) },
    Float64Array.from({ length: grid.n }, (_, i) => grid.start + i * grid.dt),
  );
  return read.map((value, i) => (Number.isNaN(value) ? (between[i] ?? Number.NaN) : value));
}
