/** What the climbs of a flight truly were, from the states and from the polar. */

import { density, densityAltitude, GRAVITY, pressureAt, standardTemperature, trueAirspeed } from './air.ts';
import { sensed } from './air-data-logger.ts';
import { mean } from './airspeed-flight.ts';
import type { FlightState } from './flight.ts';
import { CLEAN, knots } from './manoeuvre.ts';
import { calibratedFor, specificExcessPower } from './ouzel.ts';

/** kg the rates are brought to, and the day less standard, K */
export const STANDARD_MASS = 1080;
export const CLIMB_DAY_WARMER = 11;

export interface ClimbRun {
  fromSeconds: number;
  toSeconds: number;
  /** means of noiseless values */
  ias: number;
  cas: number;
  tas: number;
  heading: number;
  mass: number;
  pressureAltitude: number;
  densityAltitude: number;
  temperature: number;
  /**
   * Slope of the line through true height over the run, air's own motion and gradient of wind included, m/s. The height
   * gained over the time taken is another quantity: in air that rises and sinks it differs by some 0.05 m/s.
   */
  rateObserved: number;
  /** of the airplane itself in still air of that day, at the run's mean speed, density and mass, TAS constant, m/s */
  specificExcessPower: number;
  /** the same at constant calibrated airspeed and at the standard mass: what a handbook prints, m/s */
  rateStandard: number;
}

export interface BestClimb {
  pressureAltitude: number;
  densityAltitude: number;
  /** calibrated airspeeds of the best rate and the steepest climb, and their indicated ones, m/s */
  bestRateSpeed: number;
  bestRateIas: number;
  bestRate: number;
  bestAngleSpeed: number;
  bestAngleIas: number;
  /** speeds within 2 % of the best rate, calibrated */
  flatFrom: number;
  flatTo: number;
}

export interface CoolingClimb {
  fromSeconds: number;
  toSeconds: number;
  coolantPeak: number;
  coolantPeakSeconds: number;
  airAtPeak: number;
  oilPeak: number;
  oilPeakSeconds: number;
}

/** Pressure altitude of the flight where it was nearest to a true height, m. */
export const pressureAltitudeAt = (states: readonly FlightState[], height: number): number =>
  states.reduce((near, s) => (Math.abs(s.height - height) < Math.abs(near.height - height) ? s : near))
    .pressureAltitude;

export function runTruth(states: readonly FlightState[]): ClimbRun {
  const of = (value: (s: FlightState) => number) => mean(states, value);
  const first = states[0];
  const last = states[states.length - 1];
  if (!first || !last) throw new RangeError('a climb without rows');
  const [tas, mass, pressureAltitude] = [of((s) => s.tas), of((s) => s.mass), of((s) => s.pressureAltitude)];
  const rho = of((s) => density(s.pressure, s.temperature));
  const cas = of((s) => s.cas);
  return {
    fromSeconds: first.t,
    toSeconds: last.t,
    ias: of((s) => sensed(s).ias),
    cas,
    tas,
    heading: states[states.length >> 1]?.heading ?? Number.NaN,
    mass,
    pressureAltitude,
    densityAltitude: densityAltitude(rho),
    temperature: of((s) => s.temperature),
    rateObserved: slopeOfHeight(states),
    specificExcessPower: specificExcessPower(tas, rho, mass, CLEAN),
    rateStandard: rateAtConstantCas(cas, pressureAltitude, STANDARD_MASS),
  };
}

function slopeOfHeight(states: readonly FlightState[]): number {
  const [t, h] = [mean(states, (s) => s.t), mean(states, (s) => s.height)];
  return mean(states, (s) => (s.t - t) * (s.height - h)) / mean(states, (s) => (s.t - t) ** 2);
}

/** Still-air rate of climb at constant calibrated airspeed on the day of the flight, m/s of true height. */
export function rateAtConstantCas(cas: number, pressureAltitude: number, mass: number): number {
  const at = (h: number) => {
    const [pressure, temperature] = [pressureAt(h), standardTemperature(h) + CLIMB_DAY_WARMER];
    return { tas: trueAirspeed(cas, pressure, temperature), rho: density(pressure, temperature), temperature };
  };
  const here = at(pressureAltitude);
  const grow = (at(pressureAltitude + 5).tas - at(pressureAltitude - 5).tas) / 10;
  const perTrueHeight = (grow * standardTemperature(pressureAltitude)) / here.temperature;
  return specificExcessPower(here.tas, here.rho, mass, CLEAN) / (1 + (here.tas / GRAVITY) * perTrueHeight);
}

export function bestClimb(pressureAltitude: number): BestClimb {
  const [pressure, temperature] = [
    pressureAt(pressureAltitude),
    standardTemperature(pressureAltitude) + CLIMB_DAY_WARMER,
  ];
  const rate = (cas: number) => rateAtConstantCas(cas, pressureAltitude, STANDARD_MASS);
  const angle = (cas: number) => rate(cas) / trueAirspeed(cas, pressure, temperature);
  const speeds = Array.from({ length: 1001 }, (_, i) => knots(55 + 0.07 * i));
  const top = (value: (cas: number) => number) =>
    speeds.reduce((best, cas) => (value(cas) > value(best) ? cas : best), speeds[0] ?? 0);
  const bestRateSpeed = top(rate);
  const bestAngleSpeed = top(angle);
  const flat = speeds.filter((cas) => rate(cas) >= 0.98 * rate(bestRateSpeed));
  return {
    pressureAltitude,
    densityAltitude: densityAltitude(density(pressure, temperature)),
    bestRateSpeed,
    bestRateIas: indicatedFor(bestRateSpeed),
    bestRate: rate(bestRateSpeed),
    bestAngleSpeed,
    bestAngleIas: indicatedFor(bestAngleSpeed),
    flatFrom: flat[0] ?? Number.NaN,
    flatTo: flat[flat.length - 1] ?? Number.NaN,
  };
}

function indicatedFor(cas: number): number {
  let ias = cas;
  for (let i = 0; i < 8; i += 1) ias += cas - calibratedFor(ias, STANDARD_MASS, 'up');
  return ias;
}

export function coolingTruth(states: readonly FlightState[]): CoolingClimb {
  const first = states[0];
  const last = states[states.length - 1];
  if (!first || !last) throw new RangeError('no cooling climb');
  const hottest = (value: (s: FlightState) => number) => states.reduce((a, b) => (value(b) > value(a) ? b : a));
  const coolant = hottest((s) => s.coolant);
  const oil = hottest((s) => s.oil);
  return {
    fromSeconds: first.t,
    toSeconds: last.t,
    coolantPeak: coolant.coolant,
    coolantPeakSeconds: coolant.t,
    airAtPeak: coolant.temperature,
    oilPeak: oil.oil,
    oilPeakSeconds: oil.t,
  };
}
