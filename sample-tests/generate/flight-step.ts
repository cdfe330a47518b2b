/** One step of a flight: wind and hand in, the craft moved on, the state before it out. */
import {
  calibratedAirspeed,
  density,
  GRAVITY,
  pressureAt,
  SEA_LEVEL_DENSITY,
  standardTemperature,
  trueAirspeed,
} from './air.ts';
import type { FlightSetting, FlightState } from './flight.ts';
import { groundPower, type HeatState, stepHeat } from './heat-balance.ts';
import { degrees, type Manoeuvre } from './manoeuvre.ts';
import { calibratedFor, drag, OUZEL, powerLapse, propellerEfficiency } from './ouzel.ts';
import type { Air } from './wind.ts';

export const STEP = 0.2;
const EARTH_RADIUS = 6_371_000;
const FULL_TURN = 2 * Math.PI;
const IDLE_SHARE = 0.04;
/** Burnt beside what the shaft gives, m3/s. */
export const IDLE_FUEL = 7e-7;

/** What changes from step to step. `along` and `across` are the velocity relative to the slow wind, nose and right. */
export interface Craft {
  t: number;
  height: number;
  pressureAltitude: number;
  pressure: number;
  temperature: number;
  along: number;
  across: number;
  tas: number;
  heading: number;
  bank: number;
  latitude: number;
  longitude: number;
  used: number;
  heat: HeatState;
  windBefore: { north: number; east: number } | null;
}

/** Where the pilot's hand is at this moment, off what was meant. */
export type Hand = Record<'speed' | 'height' | 'heading' | 'bank' | 'engine' | 'throttle', number>;

/** Moves the craft one step on; returns the state at the step's start. */
export function step(
  craft: Craft,
  m: Manoeuvre,
  setting: FlightSetting,
  wind: Air,
  hand: Hand,
  throttle: (power: number) => number,
): FlightState {
  const mass = setting.mass - craft.used * OUZEL.fuelDensity;
  const rho = density(craft.pressure, craft.temperature);
  const nose = { north: Math.cos(craft.heading), east: Math.sin(craft.heading) };
  const acceleration =
    m.vertical.kind === 'ground'
      ? rollOn(craft, m, wind, nose)
      : m.vertical.kind === 'cruise'
        ? floatOn(craft, m, wind, hand, { mass, rho })
        : flyOn(craft, m, wind, hand, mass);
  const [airAlong, airAcross] = [craft.along - wind.along, craft.across - wind.across];
  craft.tas = Math.hypot(airAlong, airAcross);

  // The slow wind's own change is an acceleration of the frame in which the airplane keeps its speed.
  const before = craft.windBefore ?? wind;
  const windChange = ((wind.north - before.north) * nose.north + (wind.east - before.east) * nose.east) / STEP;
  craft.windBefore = { north: wind.north, east: wind.east };
  const { power, climb } = energy(craft, m, hand, { mass, rho, acceleration: acceleration + windChange, throttle });
  const climbRate = m.vertical.kind === 'ground' ? 0 : climb + wind.up;

  const full = OUZEL.climbPower * powerLapse(rho / SEA_LEVEL_DENSITY);
  const engineSpeed = m.engineSpeed * (1 + hand.engine);
  const fuelFlow = power * OUZEL.fuelPerJoule + IDLE_FUEL;
  const dynamicPressure = 0.5 * rho * craft.tas ** 2;
  const operation = { engineSpeed, power, exit: m.exit, fan: false, dynamicPressure, air: craft.temperature, gust: 1 };
  craft.heat = stepHeat(craft.heat, operation, STEP);
  const groundNorth = wind.north + craft.along * nose.north - craft.across * nose.east;
  const groundEast = wind.east + craft.along * nose.east + craft.across * nose.north;
  const state: FlightState = {
    t: craft.t,
    height: craft.height,
    pressureAltitude: craft.pressureAltitude,
    pressure: craft.pressure,
    temperature: craft.temperature,
    mass,
    tas: craft.tas,
    cas: calibratedAirspeed(craft.tas, craft.pressure, craft.temperature),
    loadFactor: 1 / Math.cos(craft.bank),
    heading: craft.heading,
    bank: craft.bank,
    groundNorth,
    groundEast,
    windNorth: groundNorth - (airAlong * nose.north - airAcross * nose.east),
    windEast: groundEast - (airAlong * nose.east + airAcross * nose.north),
    climbRate,
    latitude: craft.latitude,
    longitude: craft.longitude,
    engineSpeed,
    power,
    manifoldPressure: craft.pressure * (0.28 + 0.69 * Math.min(1, power / full)),
    fuelFlow,
    fuelUsed: craft.used,
    exit: m.exit,
    shape: m.shape,
    coolant: craft.heat.coolant,
    oil: craft.heat.oil,
  };
  advance(craft, m, setting, hand, { climbRate, groundNorth, groundEast, fuelFlow });
  return state;
}

/** The wheels hold the track: the air moves over the airplane, not the airplane with it. Returns the acceleration. */
function rollOn(craft: Craft, m: Manoeuvre, wind: Air, nose: { north: number; east: number }): number {
  if (m.vertical.kind !== 'ground') return 0;
  const alongWind = wind.north * nose.north + wind.east * nose.east;
  const groundSpeed = craft.windBefore === null && craft.t === 0 ? 0 : craft.along + alongWind;
  const rate = clamp((m.vertical.speed - groundSpeed) / 2, m.vertical.acceleration);
  craft.along = groundSpeed + rate * STEP - alongWind;
  craft.across = wind.north * nose.east - wind.east * nose.north;
  return rate;
}

/** Speed held by hand against the gusts, six seconds behind; sideslip dies in three. Returns the acceleration. */
function flyOn(craft: Craft, m: Manoeuvre, wind: Air, hand: Hand, mass: number): number {
  const cas = calibratedFor(m.ias + hand.speed, mass, m.shape.flap, 1 / Math.cos(craft.bank));
  const wanted = trueAirspeed(cas, craft.pressure, craft.temperature);
  const rate = clamp((wanted - (craft.along - wind.along)) / 6, 0.8);
  craft.along += rate * STEP;
  craft.across += ((wind.across - craft.across) / 3) * STEP;
  return rate;
}

/** Power left alone and height held by pitch: what thrust and drag leave goes into speed. Returns the acceleration. */
function floatOn(
  craft: Craft,
  m: Manoeuvre,
  wind: Air,
  hand: Hand,
  { mass, rho }: { mass: number; rho: number },
): number {
  const speed = Math.max(craft.tas, 5);
  const resistance = drag(0.5 * rho * speed ** 2, (mass * GRAVITY) / Math.cos(craft.bank), m.shape);
  const thrust = (cruisePower(craft, m, hand, mass, rho) * propellerEfficiency(speed)) / speed;
  const rate = clamp((thrust - resistance) / mass - (GRAVITY * holdHeight(craft, m, hand)) / speed, 0.8);
  craft.along += rate * STEP;
  craft.across += ((wind.across - craft.across) / 3) * STEP;
  return rate;
}

/** A nudge of the throttle for each m/s the speed is off, share of the power: slow flight runs away without. */
const NUDGE = 0.012;

/** The power at which the speed meant would just be held in level flight, nudged where it is not. */
function cruisePower(craft: Craft, m: Manoeuvre, hand: Hand, mass: number, rho: number): number {
  const tas = trueAirspeed(calibratedFor(m.ias, mass, m.shape.flap), craft.pressure, craft.temperature);
  const resistance = drag(0.5 * rho * tas ** 2, mass * GRAVITY, m.shape);
  const nudge = clamp(NUDGE * (tas - craft.tas), 0.02);
  return ((resistance * tas) / propellerEfficiency(tas)) * (1 + hand.throttle + nudge);
}

function holdHeight(craft: Craft, { vertical }: Manoeuvre, hand: Hand): number {
  if (vertical.kind !== 'level' && vertical.kind !== 'cruise') return 0;
  return Math.min(4, Math.max(-4, (vertical.height + hand.height - craft.height) / 8));
}

interface EnergyInput {
  mass: number;
  rho: number;
  acceleration: number;
  throttle: (power: number) => number;
}

/** Power used, and the climb through the air that it and the drag leave. */
function energy(craft: Craft, m: Manoeuvre, hand: Hand, input: EnergyInput): { power: number; climb: number } {
  const { mass, rho, acceleration, throttle } = input;
  const speed = Math.max(craft.tas, 5);
  const weight = mass * GRAVITY;
  const full = OUZEL.climbPower * powerLapse(rho / SEA_LEVEL_DENSITY);
  const vertical = m.vertical;
  if (vertical.kind === 'ground') {
    const wanted = vertical.speed > 20 ? full : Math.min(full, groundPower(m.engineSpeed));
    return { power: throttle(wanted), climb: 0 };
  }
  const resistance = drag(0.5 * rho * speed ** 2, weight / Math.cos(craft.bank), m.shape);
  if (vertical.kind === 'climb') {
    const power = throttle(full) * (1 + hand.throttle);
    const excess = (power * propellerEfficiency(speed) - resistance * speed) / weight;
    return { power, climb: excess - (speed / GRAVITY) * acceleration };
  }
  if (vertical.kind === 'cruise')
    return { power: throttle(cruisePower(craft, m, hand, mass, rho)), climb: holdHeight(craft, m, hand) };
  const climb = vertical.kind === 'level' ? holdHeight(craft, m, hand) : -vertical.rate;
  const needed = (resistance * speed + weight * climb + mass * speed * acceleration) / propellerEfficiency(speed);
  return { power: throttle(Math.min(full, Math.max(IDLE_SHARE * full, needed))), climb };
}

interface Rates {
  climbRate: number;
  groundNorth: number;
  groundEast: number;
  fuelFlow: number;
}

function advance(craft: Craft, m: Manoeuvre, setting: FlightSetting, hand: Hand, rates: Rates): void {
  const onGround = m.vertical.kind === 'ground';
  const straight = m.role === 'leg' || m.role === 'climb' || m.role === 'cooling-climb';
  const error = turnBetween(craft.heading, m.heading + hand.heading);
  const wantedBank = onGround ? 0 : clamp(1.1 * error, degrees(straight ? 6 : 24)) + hand.bank;
  craft.bank += ((wantedBank - craft.bank) / 1.2) * STEP;
  const turn = onGround
    ? clamp(0.5 * turnBetween(craft.heading, m.heading), 0.3)
    : (GRAVITY * Math.tan(craft.bank)) / Math.max(craft.tas, 15);
  craft.heading = (craft.heading + turn * STEP + FULL_TURN) % FULL_TURN;
  craft.height += rates.climbRate * STEP;
  craft.pressureAltitude += rates.climbRate * standardOverTrue(craft.pressureAltitude, setting.warmer) * STEP;
  craft.pressure = pressureAt(craft.pressureAltitude);
  craft.temperature = standardTemperature(craft.pressureAltitude) + setting.warmer;
  craft.latitude += (rates.groundNorth * STEP) / EARTH_RADIUS;
  craft.longitude += (rates.groundEast * STEP) / (EARTH_RADIUS * Math.cos(craft.latitude));
  craft.used += rates.fuelFlow * STEP;
  craft.t = Math.round((craft.t + STEP) * 10) / 10;
}

const clamp = (value: number, most: number): number => Math.min(most, Math.max(-most, value));

/** Shortest turn from one heading to another, rad, right positive. */
export function turnBetween(from: number, to: number): number {
  const turn = (to - from) % FULL_TURN;
  if (turn > Math.PI) return turn - FULL_TURN;
  return turn < -Math.PI ? turn + FULL_TURN : turn;
}

/** Change of pressure altitude for a change of true height on a day so much warmer than standard. */
export const standardOverTrue = (pressureAltitude: number, warmer: number): number =>
  standardTemperature(pressureAltitude) / (standardTemperature(pressureAltitude) + warmer);
