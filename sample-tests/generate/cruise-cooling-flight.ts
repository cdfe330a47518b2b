/**
 * Cooling in cruise: the door map on a warm day, throttle left alone at each point until coolant and oil stand still.
 * Level flight ties speed to power; points with the gear down carry the same power at a lower speed.
 */

import { density } from './air.ts';
import { sensed } from './air-data-logger.ts';
import type { FlightOptions } from './airspeed-flight.ts';
import { mean } from './airspeed-flight.ts';
import { type FlightSetting, type FlightState, fly } from './flight.ts';
import {
  type ClockTruth,
  drawFlightOffsets,
  type FlightLogs,
  type FlightOffsets,
  flightLogs,
  OUZEL_FLIGHT_OFFSETS,
} from './flight-logs.ts';
import { IDLE_FUEL } from './flight-step.ts';
import { type Operation, steadyHeat } from './heat-balance.ts';
import { CLEAN, cruise, degrees, GEAR_DOWN, knots, level, type Manoeuvre, turnTo } from './manoeuvre.ts';
import { OUZEL } from './ouzel.ts';
import { randomFrom } from './random.ts';
import type { Weather } from './wind.ts';

export interface CruisePoint {
  fromSeconds: number;
  toSeconds: number;
  /** means over the last minute of noiseless values */
  ias: number;
  fuelFlow: number;
  dynamicPressure: number;
  exit: number;
  airMean: number;
  /** where the whole model would settle in that air: as it is, and as if the thermostat stood open */
  equilibrium: number;
  equilibriumThermostatOpen: number;
  oilEquilibrium: number;
  coolantAtEnd: number;
}

export interface CruiseCoolingTruth {
  seed: number;
  offsets: FlightOffsets;
  clock: ClockTruth;
  points: CruisePoint[];
  /** settings between those flown, in the same air: nobody flew them */
  between: CruisePoint[];
}

export interface CruiseCoolingFlight {
  logs: FlightLogs;
  states: FlightState[];
  truth: CruiseCoolingTruth;
}

export const CRUISE_COOLING_SEED = 10101;
const HEIGHT = 1000;
const HOLD_SECONDS = 260;
/** indicated speed, kt; door; gear: neighbours differ by little in temperature, so that each settles soon */
const POINTS: readonly (readonly [number, number, 'up' | 'down'])[] = [
  [120, 0.6, 'up'],
  [140, 1, 'up'],
  [140, 0.4, 'up'],
  [145, 0.4, 'up'],
  [140, 0.3, 'up'],
  [130, 0.2, 'up'],
  [120, 0.15, 'up'],
  [110, 0.12, 'up'],
  [120, 0.2, 'up'],
  [130, 0.3, 'up'],
  [105, 0.45, 'down'],
  [95, 0.3, 'down'],
  [85, 0.3, 'down'],
  [75, 0.3, 'down'],
  [95, 0.4, 'down'],
];
const WARMER = 16;

/** The two files of the flight and what lies behind them; the same options give the same bytes. */
export function cruiseCoolingFlight(options: FlightOptions = {}): CruiseCoolingFlight {
  const seed = options.seed ?? CRUISE_COOLING_SEED;
  const noise = options.noise ?? 1;
  const random = randomFrom(seed, 'cruise cooling flight');
  const offsets =
    options.offsets ??
    (seed === CRUISE_COOLING_SEED ? OUZEL_FLIGHT_OFFSETS : drawFlightOffsets(random.stream('offsets')));
  const weather: Weather = {
    windFrom: degrees(215),
    windSpeed: knots(9),
    referenceHeight: HEIGHT,
    shear: 0.002,
    veer: degrees(0.008),
    drift: { north: 0, east: 0 },
    midSeconds: 2200,
    wanderSize: 0.2,
    wanderMemory: 600,
    gust: 0.4,
    gustUp: 0.3,
    lift: 0.15,
    liftMemory: 60,
  };
  const setting: FlightSetting = {
    weather,
    warmer: WARMER,
    fieldHeight: 226,
    fieldPressureAltitude: 190,
    startHeight: HEIGHT,
    startHeading: degrees(40),
    startIas: knots(120),
    mass: 1010,
    latitude: degrees(45),
    longitude: degrees(-37),
    warmth: 1,
    noise,
  };
  const { states, flown } = fly(plan(), setting, random);
  const recorders = {
    startUtcMillis: Date.UTC(2031, 5, 21, 12, 15, 33),
    monitorAheadSeconds: 51.2,
    monitorStartsAfter: 14,
    session: 36,
    // a long flight: the logger is set to a row a second
    loggerEvery: 5,
  };
  const logs = flightLogs(states, random, recorders, offsets, noise);
  const points = flown
    .filter((one) => one.manoeuvre.role === 'leg')
    .map((one) => pointTruth(states.slice(one.from, one.to)));
  return { logs, states, truth: { seed, offsets, clock: logs.clock, points, between: betweenPoints(points) } };
}

function plan(): Manoeuvre[] {
  const list: Manoeuvre[] = [level('to the area', 'transit', { ias: knots(120), heading: degrees(40) }, HEIGHT, 40)];
  POINTS.forEach(([ias, exit, gear], i) => {
    const shape = gear === 'down' ? GEAR_DOWN : CLEAN;
    const way = { ias: knots(ias), heading: degrees(i % 2 === 0 ? 220 : 40), exit, shape };
    list.push(turnTo(way, HEIGHT), level('settle', 'settle', way, HEIGHT, 15));
    list.push(cruise(`${ias} kt, door ${100 * exit} %`, way, HEIGHT, HOLD_SECONDS));
  });
  list.push(level('home', 'transit', { ias: knots(110), heading: degrees(180) }, HEIGHT, 30));
  return list;
}

const LAST_SECONDS = 60;

function pointTruth(states: readonly FlightState[]): CruisePoint {
  const [first, last] = [states[0], states[states.length - 1]];
  if (!first || !last) throw new RangeError('a point without rows');
  const late = states.filter((s) => s.t >= last.t - LAST_SECONDS);
  const of = (value: (s: FlightState) => number) => mean(late, value);
  const q = of((s) => 0.5 * density(s.pressure, s.temperature) * s.tas ** 2);
  const held = { power: of((s) => s.power), exit: last.exit, dynamicPressure: q, air: of((s) => s.temperature) };
  return {
    fromSeconds: first.t,
    toSeconds: last.t,
    ias: of((s) => sensed(s).ias),
    fuelFlow: of((s) => s.fuelFlow),
    dynamicPressure: q,
    exit: held.exit,
    airMean: held.air,
    ...settled(held),
    coolantAtEnd: last.coolant,
  };
}

type Held = Pick<Operation, 'power' | 'exit' | 'dynamicPressure' | 'air'>;

function settled(held: Held) {
  const operation: Operation = { ...held, engineSpeed: OUZEL.cruiseSpeed, fan: false, gust: 1 };
  const asIs = steadyHeat(operation);
  return {
    equilibrium: asIs.coolant,
    equilibriumThermostatOpen: steadyHeat(operation, true).coolant,
    oilEquilibrium: asIs.oil,
  };
}

// Half-way, in power, dynamic pressure and door, between pairs of points that ran fully open.
function betweenPoints(points: readonly CruisePoint[]): CruisePoint[] {
  const open = points.filter((one) => Math.abs(one.equilibrium - one.equilibriumThermostatOpen) < 0.05);
  return open.slice(1).map((one, i) => {
    const other = open[i] ?? one;
    const half = (of: (point: CruisePoint) => number) => Math.sqrt(of(one) * of(other));
    const [fuelFlow, dynamicPressure, exit] = [
      half((p) => p.fuelFlow),
      half((p) => p.dynamicPressure),
      half((p) => p.exit),
    ];
    const power = (fuelFlow - IDLE_FUEL) / OUZEL.fuelPerJoule;
    return {
      ...one,
      ias: half((p) => p.ias),
      fuelFlow,
      dynamicPressure,
      exit,
      ...settled({ power, exit, dynamicPressure, air: one.airMean }),
    };
  });
}
