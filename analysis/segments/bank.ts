/** Bank: as logged, or worked out from how fast a direction turns. Only a criterion, never a result. */
import { g0 } from '../air/index.ts';
import type { Recording } from '../logs/index.ts';
import { seriesOf } from '../logs/index.ts';
import { slopes, smooth } from '../numbers/index.ts';
import { sampleAt, unwrapped } from './sample-at.ts';

export interface Bank {
  /** rad, right wing down positive, smoothed without phase shift */
  values: Float64Array;
  /** where it comes from, for the statement of criteria */
  source: string;
}

const ROLL_SMOOTHING_SECONDS = 3;
/** Directions come in steps of a degree or are noisy: a turn rate needs this long a window. */
const TURN_WINDOW_SECONDS = 8;

/**
 * Bank at given times: roll angle if logged, else the bank of a level turn at the rate of yaw, heading or track.
 * @param recording aligned logs, object
 * @param times rising, s
 * @param speed speed at those times, m/s (indicated will do for a criterion)
 * @param hold longest step that is not a gap, s
 * @returns bank and its source, or undefined when nothing tells it
 * @source tan(bank) = V omega / g in a level turn [memory]
 */
export function bankAt(
  recording: Recording,
  times: ArrayLike<number>,
  speed: ArrayLike<number>,
  hold: number,
): Bank | undefined {
  const roll = seriesOf(recording, 'roll-angle');
  if (roll) {
    return {
      values: smooth(times, sampleAt(roll, times), ROLL_SMOOTHING_SECONDS, hold),
      source: 'roll angle as logged',
    };
  }
  const fromRate = (rate: Float64Array, source: string): Bank => ({
    values: rate.map((omega, i) => Math.atan((omega * (speed[i] ?? Number.NaN)) / g0)),
    source,
  });
  const yaw = seriesOf(recording, 'yaw-rate');
  if (yaw)
    return fromRate(smooth(times, sampleAt(yaw, times), ROLL_SMOOTHING_SECONDS, hold), 'bank worked out from yaw rate');
  for (const [quantity, word] of [
    ['heading-magnetic', 'heading'],
    ['track-true', 'track'],
  ] as const) {
    const direction = seriesOf(recording, quantity);
    if (!direction) continue;
    const turned = unwrapped(sampleAt(direction, times));
    return fromRate(slopes(times, turned, TURN_WINDOW_SECONDS, hold), `bank worked out from the rate of ${word}`);
  }
  return undefined;
}
