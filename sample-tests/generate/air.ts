/**
 * The generator's own air: standard atmosphere below the tropopause, a day that is a constant number of kelvin from
 * standard, airspeed from impact pressure. Written apart from analysis/air, from the same definitions (ICAO Doc 7488).
 */
import { toSi } from '../../analysis/units/index.ts';

export const GRAVITY = toSi(1, 'g0');
const SEA_LEVEL_TEMPERATURE = toSi(15, 'degC');
const SEA_LEVEL_PRESSURE = 101_325;
const GAS = 287.052_87;
const LAPSE = 0.0065;
const BAROMETRIC = GRAVITY / (GAS * LAPSE);
export const SEA_LEVEL_DENSITY = SEA_LEVEL_PRESSURE / (GAS * SEA_LEVEL_TEMPERATURE);
const SEA_LEVEL_SOUND = Math.sqrt(1.4 * GAS * SEA_LEVEL_TEMPERATURE);

/** Standard temperature at a pressure altitude, K. */
export const standardTemperature = (pressureAltitude: number): number =>
  SEA_LEVEL_TEMPERATURE - LAPSE * pressureAltitude;

/** Static pressure at a pressure altitude, Pa. */
export const pressureAt = (pressureAltitude: number): number =>
  SEA_LEVEL_PRESSURE * (standardTemperature(pressureAltitude) / SEA_LEVEL_TEMPERATURE) ** BAROMETRIC;

/** Pressure altitude at a static pressure, m. */
export const pressureAltitudeOf = (pressure: number): number =>
  (SEA_LEVEL_TEMPERATURE / LAPSE) * (1 - (pressure / SEA_LEVEL_PRESSURE) ** (1 / BAROMETRIC));

export const density = (pressure: number, temperature: number): number => pressure / (GAS * temperature);

/** Altitude of that density in the standard atmosphere, m. */
export const densityAltitude = (rho: number): number =>
  (SEA_LEVEL_TEMPERATURE / LAPSE) * (1 - (rho / SEA_LEVEL_DENSITY) ** (1 / (BAROMETRIC - 1)));

/** Impact pressure at a calibrated airspeed, Pa. */
export const impactPressure = (cas: number): number =>
  SEA_LEVEL_PRESSURE * ((1 + 0.2 * (cas / SEA_LEVEL_SOUND) ** 2) ** 3.5 - 1);

/** Calibrated airspeed at an impact pressure, m/s; nothing below zero. */
export const airspeedOf = (impact: number): number =>
  impact <= 0 ? 0 : SEA_LEVEL_SOUND * Math.sqrt(5 * ((impact / SEA_LEVEL_PRESSURE + 1) ** (2 / 7) - 1));

const machOf = (impact: number, pressure: number): number =>
  impact <= 0 ? 0 : Math.sqrt(5 * ((impact / pressure + 1) ** (2 / 7) - 1));

/** True airspeed of a calibrated airspeed, m/s. */
export const trueAirspeed = (cas: number, pressure: number, temperature: number): number =>
  machOf(impactPressure(cas), pressure) * Math.sqrt(1.4 * GAS * temperature);

/** Calibrated airspeed of a true airspeed, m/s. */
export const calibratedAirspeed = (tas: number, pressure: number, temperature: number): number => {
  const machSquared = tas ** 2 / (1.4 * GAS * temperature);
  return airspeedOf(pressure * ((1 + 0.2 * machSquared) ** 3.5 - 1));
};

/** What a probe reads in air of that temperature, K. */
export const probeTemperature = (temperature: number, tas: number, recovery: number): number =>
  temperature + (0.2 * recovery * tas ** 2) / (1.4 * GAS);
