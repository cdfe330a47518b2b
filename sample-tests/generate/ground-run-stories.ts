/** What was flown, or rather not yet flown: the schedules of the two extended ground runs of the story. */
import { toSi } from '../../analysis/units/index.ts';

export interface GroundStep {
  label: string;
  /** longest time in this step, s */
  seconds: number;
  /** 1/s; 0 is stopped */
  engineSpeed: number;
  /** exit door, 0..1 */
  exit: number;
  fan: boolean;
  /** displayed coolant temperature at which the pilot stops, degrees Celsius as shown */
  stopAbove?: number;
  /** s until the throttle is back */
  reactionSeconds?: number;
}

export interface GroundStory {
  seed: number;
  /** air at the start, K, and its rise in an hour, K */
  air: number;
  airRise: number;
  stationPressure: number;
  /** the monitor's own clock at the first row: local time, as if counted from 1970 */
  startLocalMillis: number;
  session: number;
  mostSeconds: number;
  /** true: start again from the first step until mostSeconds */
  repeat?: boolean;
  steps: GroundStep[];
}

const minutes = (n: number) => 60 * n;
const rpm = (n: number) => toSi(n, 'rpm');

const stopped = (label: string, seconds: number, fan = false): GroundStep => ({
  label,
  seconds,
  engineSpeed: 0,
  exit: 1,
  fan,
});

const hold = (speed: number, exit: number, fan: boolean, seconds: number): GroundStep => ({
  label: `${speed} rpm, door ${Math.round(100 * exit)} %, fan ${fan ? 'on' : 'off'}`,
  seconds,
  engineSpeed: rpm(speed),
  exit,
  fan,
  stopAbove: 104,
  reactionSeconds: 3,
});

const idleAfterStop = (seconds: number): GroundStep => ({
  label: 'stop criterion reached: idle, fan on',
  seconds,
  engineSpeed: rpm(1400),
  exit: 1,
  fan: true,
});

export const GROUND_STORIES: Record<1 | 2, GroundStory> = {
  1: {
    seed: 4104,
    air: toSi(14, 'degC'),
    airRise: 1.2,
    stationPressure: toSi(992, 'hPa'),
    startLocalMillis: Date.UTC(2031, 3, 12, 9, 14, 3),
    session: 11,
    mostSeconds: minutes(75),
    steps: [
      stopped('before start', 12),
      hold(1400, 1, false, minutes(4)),
      hold(1800, 1, false, minutes(9)),
      hold(1800, 1, true, minutes(5)),
      hold(2500, 1, false, minutes(15)),
      hold(2500, 1, true, minutes(8)),
      hold(3200, 1, true, minutes(15)),
      idleAfterStop(25),
      stopped('shut down, fan running on', minutes(4), true),
      stopped('shut down', minutes(12)),
    ],
  },
  2: {
    seed: 4119,
    air: toSi(21, 'degC'),
    airRise: 1.5,
    stationPressure: toSi(989, 'hPa'),
    startLocalMillis: Date.UTC(2031, 3, 15, 13, 41, 37),
    session: 12,
    mostSeconds: minutes(105),
    steps: [
      stopped('before start', 15),
      hold(1400, 1, false, minutes(4)),
      hold(1800, 1, false, minutes(7)),
      hold(1800, 1, true, minutes(5)),
      hold(2500, 1, true, minutes(15)),
      hold(2500, 0.6, true, minutes(15)),
      hold(2500, 0.3, true, minutes(15)),
      hold(2500, 1, true, minutes(10)),
      hold(2500, 1, false, minutes(15)),
      idleAfterStop(90),
      stopped('shut down, fan running on', minutes(4), true),
      stopped('shut down', minutes(12)),
    ],
  },
};

/** Not of the story: a run without end for the bench. */
export const LONG_RUN: GroundStory = {
  ...GROUND_STORIES[2],
  seed: 4199,
  airRise: 0,
  session: 99,
  repeat: true,
  steps: [hold(2500, 1, true, minutes(15)), hold(2500, 0.6, true, minutes(15)), hold(2500, 0.3, true, minutes(15))],
};
