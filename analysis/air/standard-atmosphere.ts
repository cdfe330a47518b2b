/**
 * The standard atmosphere to 20 km geopotential: constant lapse below the tropopause, isothermal above.
 * Symbols as in the source: theta, delta, sigma are temperature, pressure and density over their sea-level values.
 */
import { OutOfRange } from '../remarks/index.ts';

/** standard gravity, m/s2 */
export const g0 = 9.80665;
/** gas constant of dry air, J/(kg K) */
export const R = 287.05287;
/** ratio of specific heats of air */
export const GAMMA = 1.4;
/** sea level: temperature K, pressure Pa, density kg/m3, speed of sound m/s */
export const T0 = 288.15;
export const p0 = 101325;
export const rho0 = p0 / (R * T0);
export const a0 = Math.sqrt(GAMMA * R * T0);
/** lapse rate below the tropopause, K/m */
export const L = 0.0065;
/** tropopause, m geopotential */
export const H_TROPOPAUSE = 11000;
/** nominal earth radius of the standard, m */
export const r0 = 6356766;

const T11 = T0 - L * H_TROPOPAUSE;
const p11 = p0 * (T11 / T0) ** (g0 / (L * R));

/** What the standard day has at one height; SI. */
export interface StandardDay {
  /** temperature, K */
  T: number;
  /** pressure, Pa */
  p: number;
  /** density, kg/m3 */
  rho: number;
  theta: number;
  delta: number;
  sigma: number;
  /** speed of sound, m/s */
  a: number;
  /** dynamic viscosity, Pa s */
  mu: number;
}

/**
 * The standard day at a geopotential height.
 * @param H geopotential height, m, -5000 to 20000
 * @returns temperature, pressure, density, ratios, speed of sound, viscosity
 * @throws OutOfRange outside -5000 to 20000 m
 * @source [icao-7488] constants and relations; viscosity [us76]; checked in tests/outside/atmosphere.test.ts
 */
export function standardDay(H: number): StandardDay {
  if (!(H >= -5000 && H <= 20000)) throw new OutOfRange('geopotential height', H, '-5000 to 20000 m');
  const T = standardTemperature(H);
  const p =
    H <= H_TROPOPAUSE ? p0 * (T / T0) ** (g0 / (L * R)) : p11 * Math.exp((-g0 * (H - H_TROPOPAUSE)) / (R * T11));
  const rho = p / (R * T);
  return { T, p, rho, theta: T / T0, delta: p / p0, sigma: rho / rho0, a: soundSpeed(T), mu: viscosity(T) };
}

/**
 * Temperature of the standard day.
 * @param H geopotential height, m, -5000 to 20000
 * @returns temperature, K
 * @source [icao-7488]
 */
export function standardTemperature(H: number): number {
  return H <= H_TROPOPAUSE ? T0 - L * H : T11;
}

/**
 * Speed of sound in dry air.
 * @param T temperature, K, above 0
 * @returns speed, m/s
 * @throws OutOfRange when T is not above 0 K
 * @source [icao-7488]
 */
export function soundSpeed(T: number): number {
  if (!(T > 0)) throw new OutOfRange('temperature', T, 'above 0 K');
  return Math.sqrt(GAMMA * R * T);
}

/**
 * Dynamic viscosity of air, Sutherland's relation.
 * @param T temperature, K, above 0
 * @returns viscosity, Pa s
 * @source [us76] with beta 1.458e-6 and S 110.4 K
 */
export function viscosity(T: number): number {
  return (1.458e-6 * T ** 1.5) / (T + 110.4);
}

/**
 * Density ratio from actual pressure and temperature.
 * @param p static pressure, Pa, above 0
 * @param T temperature (virtual temperature where humidity is known), K, above 0
 * @returns sigma, density over sea-level standard density
 * @throws OutOfRange when p or T is not above 0
 * @source perfect gas, [icao-7488]
 */
export function densityRatio(p: number, T: number): number {
  if (!(p > 0)) throw new OutOfRange('pressure', p, 'above 0 Pa');
  if (!(T > 0)) throw new OutOfRange('temperature', T, 'above 0 K');
  return p / (R * T) / rho0;
}

/**
 * Geopotential height from geometric height above sea level.
 * @param Z geometric height, m
 * @returns geopotential height, m
 * @source [us76] with r0 6356766 m
 */
export function geopotential(Z: number): number {
  return (r0 * Z) / (r0 + Z);
}

/**
 * Geometric height from geopotential height.
 * @param H geopotential height, m
 * @returns geometric height above sea level, m
 * @source [us76] with r0 6356766 m
 */
export function geometric(H: number): number {
  return (r0 * H) / (r0 - H);
}
