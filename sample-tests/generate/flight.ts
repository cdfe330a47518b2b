/**
 * A scripted flight of Ouzel, five steps a second. The pilot holds indicated speed, height and heading like a person;
 * the airplane's inertia stands between the gusts and its speed over the ground; a climb is what the energy allows;
 * engine and coolant follow. At every step ground velocity = air velocity + wind, exactly.
 */

import { pressureAt, standardTemperature, trueAirspeed } from './air.ts';
import { type Craft, type Hand, STEP, standardOverTrue, step, turnBetween } from './flight-step.ts';
import { steadyHeat } from './heat-balance.ts';
import { degrees, type Manoeuvre } from './manoeuvre.ts';
import { calibratedFor, OUZEL, type Shape } from './ouzel.ts';
import type { Random } from './random.ts';
import { lag, wander } from './signals.ts';
import { movingAir, type Weather } from './wind.ts';

export { STEP } from './flight-step.ts';

export interface FlightSetting {
  weather: Weather;
  /** temperature less standard, K, the same at every height */
  warmer: number;
  fieldHeight: number;
  /** pressure altitude at the field's height, m */
  fieldPressureAltitude: number;
  startHeight: number;
  startHeading: number;
  /** indicated, m/s; 0 starts on the wheels */
  startIas: number;
  /** kg at the first row */
  mass: number;
  latitude: number;
  longitude: number;
  /** 0 cold, 1 as warm as in cruise */
  warmth: number;
  /** factor on everything random */
  noise: number;
}

/** State at one step, SI; every recorder sees it its own way. */
export interface FlightState {
  t: number;
  height: number;
  pressureAltitude: number;
  pressure: number;
  temperature: number;
  mass: number;
  tas: number;
  cas: number;
  loadFactor: number;
  heading: number;
  bank: number;
  groundNorth: number;
  groundEast: number;
  windNorth: number;
  windEast: number;
  climbRate: number;
  latitude: number;
  longitude: number;
  engineSpeed: number;
  power: number;
  manifoldPressure: number;
  fuelFlow: number;
  fuelUsed: number;
  exit: number;
  shape: Shape;
  coolant: number;
  oil: number;
}

export interface FlownManoeuvre {
  manoeuvre: Manoeuvre;
  /** indices of the states, first and one past the last */
  from: number;
  to: number;
}

export interface Flight {
  states: FlightState[];
  flown: FlownManoeuvre[];
}

/** Flies the plan. */
export function fly(plan: readonly Manoeuvre[], setting: FlightSetting, random: Random): Flight {
  const air = movingAir(setting.weather, random.stream('air'), STEP, setting.noise);
  const hand = pilot(random, setting.noise);
  const throttle = lag(2, STEP);
  const craft = atStart(plan, setting);
  const states: FlightState[] = [];
  const flown: FlownManoeuvre[] = [];
  for (const manoeuvre of plan) {
    const from = states.length;
    const started = craft.t;
    const heightBefore = craft.height;
    for (let over = false; !over; ) {
      states.push(step(craft, manoeuvre, setting, air(craft.t, craft.height, craft.tas), hand(), throttle));
      over = isOver(manoeuvre, craft, started, heightBefore);
    }
    flown.push({ manoeuvre, from, to: states.length });
  }
  return { states, flown };
}

function pilot(random: Random, noise: number): () => Hand {
  const of = (name: string, size: number, memory: number) => wander(random.stream(name), size * noise, memory, STEP);
  const speed = of('hand speed', 0.3, 15);
  const height = of('hand height', 4, 30);
  const heading = of('hand heading', degrees(0.8), 12);
  const bank = of('hand bank', degrees(0.5), 3);
  const engine = of('hand engine', 0.001, 20);
  const throttle = of('hand throttle', 0.003, 20);
  return () => ({
    speed: speed(),
    height: height(),
    heading: heading(),
    bank: bank(),
    engine: engine(),
    throttle: throttle(),
  });
}

function atStart(plan: readonly Manoeuvre[], setting: FlightSetting): Craft {
  let pressureAltitude = setting.fieldPressureAltitude;
  const climb = (setting.startHeight - setting.fieldHeight) / 100;
  for (let i = 0; i < 100; i += 1) pressureAltitude += climb * standardOverTrue(pressureAltitude, setting.warmer);
  const pressure = pressureAt(pressureAltitude);
  const temperature = standardTemperature(pressureAltitude) + setting.warmer;
  const flap = plan[0]?.shape.flap ?? 'up';
  const cas = setting.startIas > 0 ? calibratedFor(setting.startIas, setting.mass, flap) : 0;
  const tas = setting.startIas > 0 ? trueAirspeed(cas, pressure, temperature) : 0;
  const warm = steadyHeat({
    engineSpeed: OUZEL.cruiseSpeed,
    power: 0.5 * OUZEL.climbPower,
    exit: 0.5,
    fan: false,
    dynamicPressure: 1500,
    air: temperature,
    gust: 1,
  });
  const part = (value: number) => temperature + setting.warmth * (value - temperature);
  return {
    t: 0,
    height: setting.startHeight,
    pressureAltitude,
    pressure,
    temperature,
    along: tas,
    across: 0,
    tas,
    heading: setting.startHeading,
    bank: 0,
    latitude: setting.latitude,
    longitude: setting.longitude,
    used: 0,
    heat: { coolant: part(warm.coolant), head: part(warm.head), oil: part(warm.oil), stored: 0, wax: part(warm.wax) },
    windBefore: null,
  };
}

function isOver(m: Manoeuvre, craft: Craft, started: number, heightBefore: number): boolean {
  if (craft.t - started >= m.seconds - STEP / 2) return true;
  if (m.untilHeading && Math.abs(turnBetween(craft.heading, m.heading)) < degrees(2)) return true;
  if (m.untilSpeed !== undefined && craft.tas >= m.untilSpeed) return true;
  if (m.untilHeight === undefined) return false;
  return heightBefore < m.untilHeight ? craft.height >= m.untilHeight : craft.height <= m.untilHeight;
}
