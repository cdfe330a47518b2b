/**
 * Moving air: a mean wind with height, a slow drift, a wander of minutes, and gusts with a Dryden-like spectrum (first
 * order along the path, second order across and up; MIL-F-8785C form with light intensities, common practice).
 */
import type { Random } from './random.ts';
import { wander } from './signals.ts';

export interface Weather {
  /** where the wind comes from, rad true, and its speed, m/s, at the reference height in mid-flight */
  windFrom: number;
  windSpeed: number;
  referenceHeight: number;
  /** change of the wind with height, 1/s: along itself, and turning, rad/m (veer positive) */
  shear: number;
  veer: number;
  /** steady change of its north and east components, m/s per s, zero at mid-flight */
  drift: { north: number; east: number };
  midSeconds: number;
  /** wander of minutes, standard deviation of each component, m/s */
  wanderSize: number;
  wanderMemory: number;
  /** gusts, standard deviation of each axis, m/s */
  gust: number;
  gustUp: number;
  /** slow rising and sinking air, m/s */
  lift: number;
  liftMemory: number;
}

export interface Air {
  /** slow wind, direction the air moves to, m/s */
  north: number;
  east: number;
  /** gusts along the nose, to the right, and up, m/s */
  along: number;
  across: number;
  up: number;
}

const GUST_LENGTH = 533;

/**
 * The air at one airplane, stepped through time.
 * @param weather the day
 * @param random its stream
 * @param step s
 * @param noise factor on all that is random
 */
export function movingAir(weather: Weather, random: Random, step: number, noise = 1) {
  const slowNorth = wander(random.stream('north'), weather.wanderSize * noise, weather.wanderMemory, step);
  const slowEast = wander(random.stream('east'), weather.wanderSize * noise, weather.wanderMemory, step);
  const slowUp = wander(random.stream('lift'), weather.lift * noise, weather.liftMemory, step);
  const along = firstOrder(random.stream('along'), weather.gust * noise, step);
  const across = secondOrder(random.stream('across'), weather.gust * noise, step);
  const up = secondOrder(random.stream('up'), weather.gustUp * noise, step);
  return (t: number, height: number, tas: number): Air => {
    const above = height - weather.referenceHeight;
    const speed = weather.windSpeed + weather.shear * above;
    const to = weather.windFrom + Math.PI + weather.veer * above;
    const since = t - weather.midSeconds;
    const period = GUST_LENGTH / Math.max(tas, 20);
    return {
      north: speed * Math.cos(to) + weather.drift.north * since + slowNorth(),
      east: speed * Math.sin(to) + weather.drift.east * since + slowEast(),
      along: along(period),
      across: across(period),
      up: up(period) + slowUp(),
    };
  };
}

function firstOrder(random: Random, size: number, step: number): (period: number) => number {
  let value = size * random.normal();
  return (period) => {
    const keep = Math.exp(-step / period);
    value = keep * value + size * Math.sqrt(1 - keep * keep) * random.normal();
    return value;
  };
}

/** Numerator and double pole of the Dryden lateral form, (1 + sqrt(3) T s) / (1 + T s)^2, driven by white noise. */
function secondOrder(random: Random, size: number, step: number): (period: number) => number {
  let first = size * random.normal();
  let second = first;
  return (period) => {
    const keep = Math.exp(-step / period);
    first = keep * first + size * Math.sqrt(1 - keep * keep) * random.normal();
    second += (1 - keep) * (first - second);
    // White noise through one pole, then sqrt(3) of it less (sqrt(3) - 1) of it through the second; variance of the
    // sum is a^2 + ab + b^2/2 with a = sqrt(3), b = -(sqrt(3) - 1): 2, so divide by its root.
    return (Math.sqrt(3) * first - (Math.sqrt(3) - 1) * second) / Math.SQRT2;
  };
}
