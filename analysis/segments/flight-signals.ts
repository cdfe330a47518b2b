/** What the finders look at: airspeed, height and bank on one set of times, smoothed without phase shift. */
import type { Recording, Series } from '../logs/index.ts';
import { seriesOf } from '../logs/index.ts';
import { slopes, smooth } from '../numbers/index.ts';
import { type Bank, bankAt } from './bank.ts';
import { sampleAt } from './sample-at.ts';

export interface FlightSignals {
  /** times of the airspeed channel, s */
  times: Float64Array;
  /** longest step that is not a gap, s */
  hold: number;
  /** airspeed, m/s, and its rate, m/s2 */
  speed: Float64Array;
  acceleration: Float64Array;
  /** height, m, and its rate, m/s; all NaN when no height was logged */
  height: Float64Array;
  heightRate: Float64Array;
  bank?: Bank;
  /** the channels used, by name */
  from: string[];
}

/** Moving mean run twice; shorter than the wander of a hand-flown airplane, longer than a recorder's noise. */
const SMOOTHING_SECONDS = 5;
/** Rates over this long see a speed change and not the wander. */
const RATE_WINDOW_SECONDS = 20;
/** A step this long in the airspeed channel is a gap whatever the recorder's rate. */
const LEAST_HOLD_SECONDS = 5;

/**
 * The signals that segments are found on.
 * @param recording aligned logs, object
 * @returns signals on the times of the airspeed channel; undefined when no airspeed was logged
 */
export function flightSignals(recording: Recording): FlightSignals | undefined {
  const airspeed = seriesOf(recording, 'indicated-airspeed') ?? seriesOf(recording, 'calibrated-airspeed');
  if (!airspeed) return undefined;
  const times = airspeed.t;
  const hold = Math.max(LEAST_HOLD_SECONDS, airspeed.holdSeconds);
  const height = besideFile(recording, airspeed.file, ['pressure-altitude', 'indicated-altitude', 'gps-altitude']);
  const heights = height ? sampleAt(height, times) : new Float64Array(times.length).fill(Number.NaN);
  const speed = smooth(times, airspeed.v, SMOOTHING_SECONDS, hold);
  const bank = bankAt(recording, times, speed, hold);
  return {
    times,
    hold,
    speed,
    acceleration: slopes(times, airspeed.v, RATE_WINDOW_SECONDS, hold),
    height: smooth(times, heights, SMOOTHING_SECONDS, hold),
    heightRate: slopes(times, heights, RATE_WINDOW_SECONDS, hold),
    ...(bank ? { bank } : {}),
    from: [airspeed.quantity, ...(height ? [height.quantity] : [])],
  };
}

/**
 * The first of several channels that was logged, one of the same recorder before all others.
 * @param recording aligned logs, object
 * @param file name of the recorder's file preferred, text
 * @param quantities glossary names in order of preference, list
 * @returns the channel, or undefined
 */
export function besideFile(recording: Recording, file: string, quantities: readonly string[]): Series | undefined {
  for (const quantity of quantities) {
    const same = recording.series.find((one) => one.file === file && one.quantity === quantity);
    const any = same ?? seriesOf(recording, quantity);
    if (any) return any;
  }
  return undefined;
}
