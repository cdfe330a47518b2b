/** A ground run on one even grid: temperatures, air, and what was set at each sample. */
import type { Airplane } from '../../airplane/index.ts';
import { plausibleRangeOf, type Recording, type Series } from '../../logs/index.ts';
import { type CooledPart, type PartTrace, partTrace } from '../../models/index.ts';
import type { Flag } from '../../remarks/index.ts';
import { filledWithNearest, type Grid, gridOver, heldOnGrid, movingMean, onGrid } from '../../segments/index.ts';
import type { GroundChannels, HotChannel } from './channels.ts';

/** A part whose temperature a ground run follows. */
export type HotTrace = PartTrace<Exclude<CooledPart, 'cylinder-barrel'>>;

export interface Trace {
  /** what the times count from: the first log's file, or the written run's name */
  file: string;
  grid: Grid;
  main: HotTrace[];
  oil: HotTrace | null;
  /** air that cools, smoothed and without gaps, K */
  air: Float64Array | null;
  /** air the hot day is about, the same way, K */
  outside: Float64Array | null;
  /** 1/s, NaN where missing */
  speed: Float64Array;
  door: Float64Array | null;
  fan: Float64Array | null;
  manifold: Float64Array | null;
  /** mean pressure altitude, m, where it was logged */
  height: number | null;
}

/** Air is smoothed over this, s: the air at the probe wanders more than the air the radiator takes in. */
const AIR_SECONDS = 60;
/** Settings are held no longer than this over a recorder's silence, s. */
const HOLD_MOST = 10;

/**
 * The run of a recording on the grid of its main temperature.
 * @param recording aligned logs, object
 * @param channels its channels, object
 * @param stated outside air read by hand, K, used where none was logged
 * @returns the trace, with remarks on what was left out
 */
export function traceOf(
  recording: Recording,
  channels: GroundChannels,
  stated: number | undefined,
): { trace: Trace; flags: Flag[] } {
  const flags: Flag[] = [];
  const main = channels.main[0]?.series;
  const grid = gridOver(main?.t ?? new Float64Array());
  const hot = (channel: HotChannel): HotTrace => {
    const one = partTrace(channel, plausibleRangeOf(channel.series), grid, recording);
    flags.push(...one.flags);
    return one.trace;
  };
  const setting = (series: Series | null) => {
    if (!series) return null;
    const [low, high] = plausibleRangeOf(series);
    const read = onGrid(series, grid, (value) => value >= low && value <= high);
    return heldOnGrid(read, grid, Math.min(HOLD_MOST, Math.max(series.holdSeconds, grid.dt)));
  };
  const airOf = (series: Series | null) => (series ? airTrace(series, grid) : null);
  const constant = stated === undefined ? null : new Float64Array(grid.n).fill(stated);
  const heights = channels.height ? channels.height.v.filter((value) => !Number.isNaN(value)) : new Float64Array();
  const trace: Trace = {
    file: recording.tables[0]?.file ?? '',
    grid,
    main: channels.main.map(hot),
    oil: channels.oil ? hot(channels.oil) : null,
    air: airOf(channels.air) ?? constant,
    outside: airOf(channels.outside) ?? constant,
    speed: (setting(channels.speed) ?? new Float64Array(grid.n)).map((value) => value * channels.speedFactor),
    door: setting(channels.door),
    fan: setting(channels.fan),
    manifold: setting(channels.manifold),
    height: heights.length > 0 ? heights.reduce((sum, value) => sum + value, 0) / heights.length : null,
  };
  return { trace, flags };
}

function airTrace(series: Series, grid: Grid): Float64Array | null {
  const [low, high] = plausibleRangeOf(series);
  const values = onGrid(series, grid, (value) => value >= low && value <= high);
  // run twice, a mean over half the width weighs the whole width as a triangle
  const half = AIR_SECONDS / 2 / grid.dt;
  return filledWithNearest(movingMean(movingMean(values, half), half));
}

/** Lag of the sensor of a part as stated, s; null when nobody measured it. */
export function sensorLag(airplane: Airplane | undefined, part: HotTrace['part']): number | null {
  return part === 'coolant' ? (airplane?.cooling.sensorLag?.si ?? null) : null;
}
