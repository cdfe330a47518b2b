/** A ground run on one even grid: temperatures, air, and what was set at each sample. */
import type { Airplane } from '../../airplane/index.ts';
import { brokenStretches, plausibleRangeOf, type Recording, type Series } from '../../logs/index.ts';
import type { CooledPart } from '../../models/index.ts';
import { quantisationStep } from '../../numbers/index.ts';
import { type Flag, flag } from '../../remarks/index.ts';
import { filledWithNearest, type Grid, gridOver, heldOnGrid, movingMean, onGrid } from '../../segments/index.ts';
import type { GroundChannels, HotChannel } from './channels.ts';

export interface HotTrace {
  /** glossary name with its index, for naming the hottest head */
  quantity: string;
  part: Exclude<CooledPart, 'cylinder-barrel'>;
  series: Series;
  /** K, NaN where missing or left out */
  values: Float64Array;
  /** the same over 15 s, for asking whether a threshold was passed */
  steady: Float64Array;
  /** recording step, K, 0 where none shows */
  step: number;
  /** readings in one sample */
  perSample: number;
  /** stretches the log marks as a broken sensor, recording time, s */
  broken: readonly { from: number; to: number }[];
}

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
/** Readings are smoothed over this before a threshold is asked for, s. */
const STEADY_SECONDS = 15;
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
  const hot = (channel: HotChannel): HotTrace => hotTrace(channel, grid, recording, flags);
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

function hotTrace({ series, part }: HotChannel, grid: Grid, recording: Recording, flags: Flag[]): HotTrace {
  const [low, high] = plausibleRangeOf(series);
  const broken = brokenStretches(recording, series);
  let left = 0;
  const values = onGrid(series, grid, (value, t) => {
    const fails = broken.some((one) => t >= one.from && t <= one.to);
    const taken = value >= low && value <= high && !fails;
    if (!taken) left += 1;
    return taken;
  });
  if (left > 0) {
    flags.push(
      flag(
        'excluded',
        `${left} readings of "${series.column}" were left out: no ${part} can read so, or the channel is marked as broken there`,
      ),
    );
  }
  const period = grid.dt * (grid.n / Math.max(1, series.v.length));
  return {
    quantity: series.quantity,
    part,
    series,
    values,
    steady: movingMean(values, STEADY_SECONDS / grid.dt),
    step: quantisationStep(series.v),
    broken,
    perSample: Math.max(1, grid.dt / period),
  };
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
