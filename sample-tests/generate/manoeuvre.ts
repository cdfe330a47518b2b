/** The words a flight is planned in. Speeds m/s indicated, heights m above sea level, headings rad true. */
import { toSi } from '../../analysis/units/index.ts';
import { OUZEL, type Shape } from './ouzel.ts';

export type Vertical =
  | { kind: 'level'; height: number }
  /** throttle left where the speed wants it but for nudges, height held by pitch: the speed floats */
  | { kind: 'cruise'; height: number }
  /** full throttle, speed held by pitch: the energy decides the rate */
  | { kind: 'climb' }
  /** m/s down */
  | { kind: 'sink'; rate: number }
  /** on the wheels: speed over the ground wanted and the acceleration used to reach it */
  | { kind: 'ground'; speed: number; acceleration: number };

export interface Manoeuvre {
  label: string;
  /** leg, climb, cooling-climb: what a reduction may use; turn, settle, transit, ground: the rest */
  role: 'leg' | 'climb' | 'cooling-climb' | 'turn' | 'settle' | 'transit' | 'ground';
  ias: number;
  heading: number;
  vertical: Vertical;
  /** longest time, s */
  seconds: number;
  /** ends when it comes through this height */
  untilHeight?: number;
  /** ends when this indicated airspeed is reached on the ground */
  untilSpeed?: number;
  /** ends within two degrees of the heading */
  untilHeading?: boolean;
  engineSpeed: number;
  exit: number;
  shape: Shape;
}

export const CLEAN: Shape = { flap: 'up', gearDown: false };
export const GEAR_DOWN: Shape = { flap: 'up', gearDown: true };

export const knots = (n: number): number => toSi(n, 'kt');
export const degrees = (n: number): number => toSi(n, 'deg');

interface Way {
  ias: number;
  heading: number;
  exit?: number;
  shape?: Shape;
}

const base = (way: Way) => ({ ias: way.ias, heading: way.heading, exit: way.exit ?? 0.5, shape: way.shape ?? CLEAN });

/** Level flight for a time. */
export const level = (
  label: string,
  role: Manoeuvre['role'],
  way: Way,
  height: number,
  seconds: number,
): Manoeuvre => ({
  ...base(way),
  label,
  role,
  vertical: { kind: 'level', height },
  seconds,
  engineSpeed: OUZEL.cruiseSpeed,
});

/** Level with the throttle left alone, so that what is burnt is steady and the speed is not quite. */
export const cruise = (label: string, way: Way, height: number, seconds: number): Manoeuvre => ({
  ...level(label, 'leg', way, height, seconds),
  vertical: { kind: 'cruise', height },
});

/** A level turn to a heading. */
export const turnTo = (way: Way, height: number): Manoeuvre => ({
  ...level('turn', 'turn', way, height, 120),
  untilHeading: true,
});

/** A full-throttle climb to a height. */
export const climbTo = (
  label: string,
  role: Manoeuvre['role'],
  way: Way,
  height: number,
  seconds = 900,
): Manoeuvre => ({
  ...base({ exit: 1, ...way }),
  label,
  role,
  vertical: { kind: 'climb' },
  seconds,
  untilHeight: height,
  engineSpeed: OUZEL.climbSpeed,
});

/** A descent to a height. */
export const sinkTo = (way: Way, rate: number, height: number): Manoeuvre => ({
  ...base(way),
  label: 'descent',
  role: 'transit',
  vertical: { kind: 'sink', rate },
  seconds: 1800,
  untilHeight: height,
  engineSpeed: toSi(3800, 'rpm'),
});

/** On the wheels at a ground speed for a time. */
export const roll = (
  label: string,
  heading: number,
  speed: number,
  seconds: number,
  engineSpeed: number,
  acceleration = 0.8,
): Manoeuvre => ({
  ...base({ ias: 0, heading, exit: 1, shape: GEAR_DOWN }),
  label,
  role: 'ground',
  vertical: { kind: 'ground', speed, acceleration },
  seconds,
  engineSpeed,
});
