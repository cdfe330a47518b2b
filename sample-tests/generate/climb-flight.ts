/**
 * Story item 7: climbs at five speeds through two bands on reciprocal headings, then a cooling climb from 450 m to
 * 2600 m whose coolant peaks on the way. Rates are what the energy leaves; rising and sinking air scatters them.
 */

import type { FlightOptions } from './airspeed-flight.ts';
import {
  type BestClimb,
  bestClimb,
  CLIMB_DAY_WARMER,
  type ClimbRun,
  type CoolingClimb,
  coolingTruth,
  pressureAltitudeAt,
  runTruth,
  STANDARD_MASS,
} from './climb-truth.ts';
import { type FlightSetting, type FlightState, fly } from './flight.ts';
import {
  type ClockTruth,
  drawFlightOffsets,
  type FlightLogs,
  type FlightOffsets,
  flightLogs,
  OUZEL_FLIGHT_OFFSETS,
} from './flight-logs.ts';
import { climbTo, degrees, knots, level, type Manoeuvre, sinkTo, turnTo } from './manoeuvre.ts';
import { randomFrom } from './random.ts';
import type { Weather } from './wind.ts';

export interface ClimbTruth {
  seed: number;
  offsets: FlightOffsets;
  clock: ClockTruth;
  /** a pilot may be told these */
  massAtFirstRow: number;
  standardMass: number;
  runs: ClimbRun[];
  best: BestClimb[];
  cooling: CoolingClimb;
}

export interface ClimbFlight {
  logs: FlightLogs;
  states: FlightState[];
  truth: ClimbTruth;
}

export const CLIMB_SEED = 7101;
const SPEEDS = [70, 79, 88, 97, 108];
const HEADINGS = [335, 155];
const BANDS = [{ bottom: 600 }, { bottom: 1800 }];
const RUN_SECONDS = 120;
const COOLING_FROM = 450;
const COOLING_TO = 2600;
const COOLING_SPEED = 95;
const FLIGHT_SECONDS = 5400;

/** The two files of the flight and what lies behind them; the same options give the same bytes. */
export function climbFlight(options: FlightOptions = {}): ClimbFlight {
  const seed = options.seed ?? CLIMB_SEED;
  const noise = options.noise ?? 1;
  const random = randomFrom(seed, 'climb flight');
  const offsets =
    options.offsets ?? (seed === CLIMB_SEED ? OUZEL_FLIGHT_OFFSETS : drawFlightOffsets(random.stream('offsets')));
  const weather: Weather = {
    windFrom: degrees(250),
    windSpeed: knots(14),
    referenceHeight: 1200,
    shear: 0.002,
    veer: degrees(0.008),
    drift: { north: (noise * knots(0.8)) / 3600, east: (noise * knots(0.6)) / 3600 },
    midSeconds: FLIGHT_SECONDS / 2,
    wanderSize: 0.2,
    wanderMemory: 600,
    gust: 0.5,
    gustUp: 0.35,
    lift: 0.15,
    liftMemory: 60,
  };
  const setting: FlightSetting = {
    weather,
    warmer: CLIMB_DAY_WARMER,
    fieldHeight: 226,
    fieldPressureAltitude: 201,
    startHeight: 500,
    startHeading: degrees(350),
    startIas: knots(97),
    mass: 1062,
    latitude: degrees(45),
    longitude: degrees(-37),
    warmth: 1,
    noise,
  };
  const { states, flown } = fly(plan(), setting, random);
  const recorders = {
    startUtcMillis: Date.UTC(2031, 4, 14, 7, 41, 52),
    monitorAheadSeconds: 49.6,
    monitorStartsAfter: 17,
    session: 31,
  };
  const logs = flightLogs(states, random, recorders, offsets, noise);
  const of = (role: Manoeuvre['role']) => flown.filter((one) => one.manoeuvre.role === role);
  const cooling = of('cooling-climb').flatMap((one) => states.slice(one.from, one.to));
  return {
    logs,
    states,
    truth: {
      seed,
      offsets,
      clock: logs.clock,
      massAtFirstRow: setting.mass,
      standardMass: STANDARD_MASS,
      runs: of('climb').map((one) => runTruth(states.slice(one.from, one.to))),
      best: BANDS.map((band) => bestClimb(pressureAltitudeAt(states, band.bottom + 300))),
      cooling: coolingTruth(cooling),
    },
  };
}

function plan(): Manoeuvre[] {
  const list: Manoeuvre[] = [];
  for (const band of BANDS) {
    const start = band.bottom - 60;
    for (const speed of SPEEDS) {
      for (const degreesTrue of HEADINGS) {
        const way = { ias: knots(speed), heading: degrees(degreesTrue), exit: 1 };
        const fast = { ...way, ias: knots(Math.min(120, speed + 22)), exit: 0.6 };
        // Down on the way round (the first time up), then slow down below the band and climb through it.
        const below = speed === SPEEDS[0] && degreesTrue === HEADINGS[0];
        list.push(below ? climbTo('to the band', 'transit', fast, start) : sinkTo(fast, 12, start));
        list.push(turnTo(fast, start));
        list.push(level('slow down', 'settle', way, start, 15));
        list.push(climbTo('into the band', 'settle', way, band.bottom + 400, 12));
        list.push(climbTo(`${speed} kt`, 'climb', way, band.bottom + 2000, RUN_SECONDS));
      }
    }
  }
  const way = { ias: knots(COOLING_SPEED), heading: degrees(200), exit: 1 };
  list.push(sinkTo({ ...way, ias: knots(135), exit: 0.5 }, 12, COOLING_FROM - 30));
  list.push(turnTo({ ...way, exit: 0.6 }, COOLING_FROM - 30));
  list.push(level('slow down', 'settle', { ...way, exit: 0.6 }, COOLING_FROM - 30, 150));
  list.push(climbTo('cooling climb', 'cooling-climb', way, COOLING_TO));
  list.push(level('level off', 'transit', { ...way, ias: knots(125) }, COOLING_TO, 60));
  return list;
}
