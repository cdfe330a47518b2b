/** Story item 5: the first flight, gear down all the way. Taxi, take-off, climb overhead, two trials, landing. */

import { toSi } from '../../analysis/units/index.ts';
import type { FlightOptions } from './airspeed-flight.ts';
import { type FlightSetting, type FlightState, fly, STEP } from './flight.ts';
import { type ClockTruth, type FlightLogs, flightLogs, OUZEL_FLIGHT_OFFSETS } from './flight-logs.ts';
import { climbTo, degrees, GEAR_DOWN, knots, level, type Manoeuvre, roll, sinkTo, turnTo } from './manoeuvre.ts';
import { OUZEL } from './ouzel.ts';
import { randomFrom } from './random.ts';

export interface FirstFlight {
  logs: FlightLogs;
  states: FlightState[];
  truth: FirstFlightTruth;
}

export interface FirstFlightTruth {
  seed: number;
  clock: ClockTruth;
  massAtFirstRow: number;
  /** true direction of the runway used, rad, and height of the field, m */
  runway: number;
  fieldHeight: number;
  /** s from the logger's first row */
  brakeReleaseSeconds: number;
  liftOffSeconds: number;
  touchdownSeconds: number;
  /** along the runway, m; wheels on the ground */
  groundRoll: number;
  coolantPeak: number;
  oilPeak: number;
}

const FIRST_FLIGHT_SEED = 5101;
export const FIELD_HEIGHT = 226;
// Runway 26: 260 magnetic, 11 degrees of west variation.
const RUNWAY = degrees(249);
const LIFT_OFF_IAS = 64;

/** The two files of the flight and what lies behind them; the same options give the same bytes. */
export function firstFlight(options: FlightOptions = {}): FirstFlight {
  const seed = options.seed ?? FIRST_FLIGHT_SEED;
  const noise = options.noise ?? 1;
  const random = randomFrom(seed, 'first flight');
  const setting: FlightSetting = {
    weather: {
      windFrom: degrees(262),
      windSpeed: knots(7),
      referenceHeight: FIELD_HEIGHT,
      shear: 0.003,
      veer: degrees(0.01),
      drift: { north: 0, east: 0 },
      midSeconds: 0,
      wanderSize: 0.15 * noise,
      wanderMemory: 300,
      gust: 0.4,
      gustUp: 0.25,
      lift: 0.1,
      liftMemory: 60,
    },
    warmer: 2,
    fieldHeight: FIELD_HEIGHT,
    fieldPressureAltitude: 150,
    startHeight: FIELD_HEIGHT,
    startHeading: degrees(69),
    startIas: 0,
    mass: 952,
    latitude: degrees(45),
    longitude: degrees(-37),
    warmth: 0.85,
    noise,
  };
  const { states, flown } = fly(plan(), setting, random);
  const recorders = {
    startUtcMillis: Date.UTC(2031, 4, 3, 6, 12, 40),
    monitorAheadSeconds: 44.2,
    monitorStartsAfter: 9,
    session: 23,
  };
  const logs = flightLogs(states, random, recorders, options.offsets ?? OUZEL_FLIGHT_OFFSETS, noise);
  const [run, landing] = ['take-off run', 'landing roll'].map((label) =>
    flown.find((f) => f.manoeuvre.label === label),
  );
  const from = states[run?.from ?? 0];
  const off = states[run?.to ?? 0];
  const down = states[landing?.from ?? 0];
  if (!from || !off || !down) throw new RangeError('the first flight lacks a take-off or a landing');
  const rows = states.slice(run?.from, run?.to);
  return {
    logs,
    states,
    truth: {
      seed,
      clock: logs.clock,
      massAtFirstRow: setting.mass,
      runway: RUNWAY,
      fieldHeight: FIELD_HEIGHT,
      brakeReleaseSeconds: from.t,
      liftOffSeconds: off.t,
      touchdownSeconds: down.t,
      groundRoll: rows.reduce((sum, s) => sum + Math.hypot(s.groundNorth, s.groundEast) * STEP, 0),
      coolantPeak: Math.max(...states.map((s) => s.coolant)),
      oilPeak: Math.max(...states.map((s) => s.oil)),
    },
  };
}

function plan(): Manoeuvre[] {
  const away = RUNWAY + Math.PI;
  const idle = toSi(1500, 'rpm');
  const gear = { shape: GEAR_DOWN, exit: 1 };
  const area = 900;
  return [
    roll('warm-up at the stand', away, 0, 20, idle),
    roll('taxi', away, knots(9), 60, toSi(1800, 'rpm')),
    roll('line up', RUNWAY, knots(3), 15, idle),
    roll('stop', RUNWAY, 0, 6, idle),
    {
      ...roll('take-off run', RUNWAY, 60, 60, OUZEL.takeoffSpeed, 2.1),
      untilSpeed: knots(LIFT_OFF_IAS + 4),
    },
    climbTo('climb overhead', 'transit', { ias: knots(90), heading: RUNWAY, ...gear }, 420),
    climbTo('climb overhead', 'transit', { ias: knots(95), heading: away, ...gear }, area),
    turnTo({ ias: knots(95), heading: degrees(340), ...gear }, area),
    level('hands off trim', 'leg', { ias: knots(95), heading: degrees(340), ...gear }, area, 60),
    turnTo({ ias: knots(85), heading: degrees(160), ...gear }, area),
    level('slow, feel for the stall warning', 'leg', { ias: knots(72), heading: degrees(160), ...gear }, area, 60),
    level('back to the field', 'transit', { ias: knots(95), heading: away, ...gear }, area, 20),
    sinkTo({ ias: knots(85), heading: RUNWAY + Math.PI, ...gear }, 4.5, 520),
    sinkTo({ ias: knots(72), heading: RUNWAY, ...gear }, 3.2, FIELD_HEIGHT + 1),
    roll('landing roll', RUNWAY, 0, 32, idle, 1.6),
    roll('taxi back', away, knots(9), 60, toSi(1800, 'rpm')),
    roll('at the stand', away, 0, 15, idle),
  ];
}
