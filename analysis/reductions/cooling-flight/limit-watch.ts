/** Readings over a limit anywhere in the flight: an event, whatever the points say. */
import type { Airplane } from '../../airplane/index.ts';
import { brokenStretches, type Recording } from '../../logs/index.ts';
import { limitEvents, limitsOf } from '../../models/index.ts';
import type { Flag } from '../../remarks/index.ts';
import type { Comparison } from '../../results/index.ts';
import type { FlightChannels } from './channels.ts';

/**
 * Events of a flight.
 * @param channels of the recording, object
 * @param recording aligned logs, for the clock of each file
 * @param airplane limits, or undefined
 * @returns flags and comparisons, stretches of a broken sensor left out
 */
export function flightEvents(
  { hot }: FlightChannels,
  recording: Recording,
  airplane: Airplane | undefined,
): { flags: Flag[]; comparisons: Comparison[] } {
  const all = hot.map(({ series, part }) => {
    const broken = brokenStretches(recording, series);
    return limitEvents({ quantity: series.quantity, series, broken }, limitsOf(airplane, part));
  });
  return { flags: all.flatMap((one) => one.flags), comparisons: all.flatMap((one) => one.comparisons) };
}
