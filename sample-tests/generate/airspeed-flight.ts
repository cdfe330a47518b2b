/** Story item 6: airspeed calibration, six speeds, four headings each, in a drifting and gusty 17 kt from 245. */
import { sensed } from './air-data-logger.ts';
import { type FlightSetting, type FlightState, fly } from './flight.ts';
import {
  type ClockTruth,
  drawFlightOffsets,
  type FlightLogs,
  type FlightOffsets,
  flightLogs,
  OUZEL_FLIGHT_OFFSETS,
} from './flight-logs.ts';
import { degrees, knots, level, type Manoeuvre, turnTo } from './manoeuvre.ts';
import { calibratedFor } from './ouzel.ts';
import { randomFrom } from './random.ts';
import type { Weather } from './wind.ts';

export interface AirspeedLeg {
  fromSeconds: number;
  toSeconds: number;
  /** means over the leg of noiseless values, SI; ias is what a perfect indicator on the static port shows */
  ias: number;
  cas: number;
  /** calibrated less indicated airspeed, m/s */
  correction: number;
  tas: number;
  pressure: number;
  temperature: number;
  heading: number;
  mass: number;
  windNorth: number;
  windEast: number;
}

export interface AirspeedTruth {
  seed: number;
  offsets: FlightOffsets;
  clock: ClockTruth;
  /** over all legs; the vectors say where the air moves to, direction says where it comes from */
  wind: { speed: number; direction: number; windNorth: number; windEast: number };
  drift: { driftNorth: number; driftEast: number };
  legs: AirspeedLeg[];
  /** level flight at 1000 kg, flaps up */
  positionError: { ias: number; cas: number; correction: number }[];
}

export interface AirspeedFlight {
  logs: FlightLogs;
  states: FlightState[];
  truth: AirspeedTruth;
}

export interface FlightOptions {
  seed?: number;
  noise?: number;
  offsets?: FlightOffsets;
}

export const AIRSPEED_SEED = 6101;
const SPEEDS = [97, 114, 132, 150, 80, 65];
const HEADINGS = [60, 150, 240, 330];
const HEIGHT = 1500;
const LEG_SECONDS = 90;
const FLIGHT_SECONDS = 3200;

/** The two files of the flight and what lies behind them; the same options give the same bytes. */
export function airspeedFlight(options: FlightOptions = {}): AirspeedFlight {
  const seed = options.seed ?? AIRSPEED_SEED;
  const noise = options.noise ?? 1;
  const random = randomFrom(seed, 'airspeed flight');
  const offsets =
    options.offsets ?? (seed === AIRSPEED_SEED ? OUZEL_FLIGHT_OFFSETS : drawFlightOffsets(random.stream('offsets')));
  const drift = { north: (noise * knots(1.2)) / 3600, east: (-noise * knots(0.9)) / 3600 };
  const weather: Weather = {
    windFrom: degrees(245),
    windSpeed: knots(17),
    referenceHeight: HEIGHT,
    shear: 0.003,
    veer: degrees(0.01),
    drift,
    midSeconds: FLIGHT_SECONDS / 2,
    wanderSize: 0.2,
    wanderMemory: 600,
    gust: 0.6,
    gustUp: 0.4,
    lift: 0.15,
    liftMemory: 60,
  };
  const setting: FlightSetting = {
    weather,
    warmer: 4,
    fieldHeight: 226,
    fieldPressureAltitude: 176,
    startHeight: HEIGHT,
    startHeading: degrees(20),
    startIas: knots(97),
    mass: 985,
    latitude: degrees(45),
    longitude: degrees(-37),
    warmth: 1,
    noise,
  };
  const { states, flown } = fly(plan(), setting, random);
  const recorders = {
    startUtcMillis: Date.UTC(2031, 4, 10, 8, 3, 10),
    monitorAheadSeconds: 47.4,
    monitorStartsAfter: 21,
    session: 27,
  };
  const logs = flightLogs(states, random, recorders, offsets, noise);
  const legs = flown
    .filter((one) => one.manoeuvre.role === 'leg')
    .map((one) => legTruth(states.slice(one.from, one.to)));
  const windNorth = mean(legs, (leg) => leg.windNorth);
  const windEast = mean(legs, (leg) => leg.windEast);
  const direction = (Math.atan2(-windEast, -windNorth) + 2 * Math.PI) % (2 * Math.PI);
  return {
    logs,
    states,
    truth: {
      seed,
      offsets,
      clock: logs.clock,
      wind: { speed: Math.hypot(windNorth, windEast), direction, windNorth, windEast },
      drift: { driftNorth: drift.north, driftEast: drift.east },
      legs,
      positionError: [65, 80, 97, 114, 132, 150].map((ias) => {
        const cas = calibratedFor(knots(ias), 1000, 'up');
        return { ias: knots(ias), cas, correction: cas - knots(ias) };
      }),
    },
  };
}

function plan(): Manoeuvre[] {
  const list: Manoeuvre[] = [level('to the area', 'transit', { ias: knots(97), heading: degrees(20) }, HEIGHT, 40)];
  SPEEDS.forEach((speed, k) => {
    const ias = knots(speed);
    // Each speed starts where the last one ended and goes round.
    const headings = HEADINGS.map((_, i) => degrees(HEADINGS[(i + k) % HEADINGS.length] ?? 0));
    headings.forEach((heading, i) => {
      const way = { ias, heading, exit: speed < 90 ? 1 : 0.5 };
      list.push(turnTo(way, HEIGHT));
      if (i === 0) list.push(level('speed change', 'settle', way, HEIGHT, 25));
      list.push(level('settle', 'settle', way, HEIGHT, 12));
      list.push(level(`${speed} kt`, 'leg', way, HEIGHT, LEG_SECONDS));
    });
  });
  list.push(level('home', 'transit', { ias: knots(110), heading: degrees(180) }, HEIGHT, 40));
  return list;
}

function legTruth(states: readonly FlightState[]): AirspeedLeg {
  const of = (value: (s: FlightState) => number) => mean(states, value);
  const ias = of((s) => sensed(s).ias);
  const cas = of((s) => s.cas);
  return {
    fromSeconds: states[0]?.t ?? Number.NaN,
    toSeconds: states[states.length - 1]?.t ?? Number.NaN,
    ias,
    cas,
    correction: cas - ias,
    tas: of((s) => s.tas),
    pressure: of((s) => s.pressure),
    temperature: of((s) => s.temperature),
    heading: states[states.length >> 1]?.heading ?? Number.NaN,
    mass: of((s) => s.mass),
    windNorth: of((s) => s.windNorth),
    windEast: of((s) => s.windEast),
  };
}

export function mean<T>(list: readonly T[], value: (one: T) => number): number {
  return list.reduce((sum, one) => sum + value(one), 0) / list.length;
}
