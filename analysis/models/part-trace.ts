/** One temperature of an engine on an even grid, with what a reduction must know of its readings. */
import { brokenStretches, type Recording, type Series } from '../logs/index.ts';
import { quantisationStep } from '../numbers/index.ts';
import { type Flag, flag } from '../remarks/index.ts';
import { type Grid, movingMean, onGrid } from '../segments/index.ts';
import type { CooledPart } from './hot-day.ts';

export interface PartTrace<Part extends CooledPart = CooledPart> {
  /** glossary name with its index, for naming the hottest head */
  quantity: string;
  part: Part;
  series: Series;
  /** K, NaN where missing or left out */
  values: Float64Array;
  /** the same over 15 s, for asking whether a threshold was passed or what a thermostat does */
  steady: Float64Array;
  /** recording step, K, 0 where none shows */
  step: number;
  /** readings in one sample */
  perSample: number;
  /** stretches the log marks as a broken sensor, recording time, s */
  broken: readonly { from: number; to: number }[];
}

/** Readings are smoothed over this before a threshold is asked for, s. */
const STEADY_SECONDS = 15;

/**
 * A temperature channel on a grid.
 * @param channel its readings and the part it sits on, object
 * @param range what the part can read, lowest and highest, K
 * @param grid the grid, object
 * @param recording the log it stands in, object
 * @returns the trace, with a remark where readings were left out
 * @source means of a sample's own readings; the 15 s are the project's own [own]
 */
export function partTrace<Part extends CooledPart>(
  { series, part }: { series: Series; part: Part },
  [low, high]: readonly [number, number],
  grid: Grid,
  recording: Recording,
): { trace: PartTrace<Part>; flags: Flag[] } {
  const broken = brokenStretches(recording, series);
  let left = 0;
  const values = onGrid(series, grid, (value, t) => {
    const taken = value >= low && value <= high && !broken.some((one) => t >= one.from && t <= one.to);
    if (!taken) left += 1;
    return taken;
  });
  const why = `${left} readings of "${series.column}" were left out: no ${part} can read so, or the channel is marked as broken there`;
  return {
    trace: {
      quantity: series.quantity,
      part,
      series,
      values,
      steady: movingMean(values, STEADY_SECONDS / grid.dt),
      step: quantisationStep(series.v),
      perSample: Math.max(1, series.v.length / grid.n),
      broken,
    },
    flags: left > 0 ? [flag('excluded', why)] : [],
  };
}
