/** Turns the moments of a stall series into states of the airplane that the logger can look at. */
import { toSi } from '../../analysis/units/index.ts';
import { pressureAt, standardTemperature, trueAirspeed } from './air.ts';
import { type FlightState, STEP } from './flight.ts';
import { degrees, knots } from './manoeuvre.ts';
import { calibratedFor, OUZEL, type Shape } from './ouzel.ts';

const HEIGHT = toSi(6800, 'ft');
const WARMER = 5;
const EARTH_RADIUS = 6_371_000;
const FUEL_FLOW = toSi(14, 'L/h');
export const START_MASS = 1018;

/** One moment of the series, beside what a FlightState holds. */
export interface Moment {
  ias: number;
  loadFactor: number;
  pitch: number;
  pitchRate: number;
  elevator: number;
  marked: boolean;
  climbRate: number;
}

export type StallFlyer = (shape: Shape, moment: Moment) => void;

/** Mass at a row of the series, kg. */
export const massAt = (row: number): number => START_MASS - row * STEP * FUEL_FLOW * OUZEL.fuelDensity;

/** Adds a moment to the series, with the air it is flown in. */
export function seriesFlyer(states: FlightState[], moments: Moment[]): StallFlyer {
  let height = HEIGHT;
  let latitude = degrees(45.12);
  let longitude = degrees(-37);
  const heading = degrees(30);
  const wind = { north: -knots(5), east: knots(4) };
  return (shape, moment) => {
    const row = states.length;
    const pressureAltitude = height - 20;
    const pressure = pressureAt(pressureAltitude);
    const temperature = standardTemperature(pressureAltitude) + WARMER;
    const mass = massAt(row);
    const cas = calibratedFor(moment.ias, mass, shape.flap, Math.max(0.3, moment.loadFactor));
    const tas = trueAirspeed(cas, pressure, temperature);
    const groundNorth = tas * Math.cos(heading) + wind.north;
    const groundEast = tas * Math.sin(heading) + wind.east;
    states.push({
      t: Math.round(row * STEP * 10) / 10,
      height,
      pressureAltitude,
      pressure,
      temperature,
      mass,
      tas,
      cas,
      loadFactor: moment.loadFactor,
      heading,
      bank: 0,
      groundNorth,
      groundEast,
      windNorth: wind.north,
      windEast: wind.east,
      climbRate: moment.climbRate,
      latitude,
      longitude,
      engineSpeed: toSi(moment.climbRate > 0 ? 4200 : 1600, 'rpm'),
      power: moment.climbRate > 0 ? 80_000 : 5000,
      manifoldPressure: pressure * 0.4,
      fuelFlow: FUEL_FLOW,
      fuelUsed: row * STEP * FUEL_FLOW,
      exit: 0.5,
      shape,
      coolant: toSi(84, 'degC'),
      oil: toSi(80, 'degC'),
    });
    moments.push(moment);
    height += moment.climbRate * STEP;
    latitude += (groundNorth * STEP) / EARTH_RADIUS;
    longitude += (groundEast * STEP) / (EARTH_RADIUS * Math.cos(latitude));
  };
}
