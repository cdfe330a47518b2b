/** Density altitude and back. */
import { OutOfRange } from '../remarks/index.ts';
import { densityRatio, g0, H_TROPOPAUSE, L, R, standardDay, T0 } from './standard-atmosphere.ts';

const EXPONENT = g0 / (R * L) - 1;

/**
 * Density altitude: the standard-day height with this density.
 * @param p static pressure, Pa, above 0
 * @param T temperature, virtual where humidity is known, K, above 0
 * @returns density altitude, m geopotential
 * @throws OutOfRange when p or T is not above 0, or the height would lie above the tropopause
 * @source sigma = theta^(g0/(R L) - 1) below 11 km [icao-7488]
 */
export function densityAltitude(p: number, T: number): number {
  return heightOfDensityRatio(densityRatio(p, T));
}

/**
 * Height of the standard day with a density ratio.
 * @param sigma density over sea-level standard density, 0.297 to 1.63
 * @returns height, m geopotential
 * @throws OutOfRange above the tropopause or below -5000 m
 * @source [icao-7488]
 */
export function heightOfDensityRatio(sigma: number): number {
  const top = standardDay(H_TROPOPAUSE).sigma;
  const bottom = standardDay(-5000).sigma;
  if (!(sigma >= top && sigma <= bottom))
    throw new OutOfRange('density ratio', sigma, `${top.toFixed(3)} to ${bottom.toFixed(3)}`);
  return (T0 / L) * (1 - sigma ** (1 / EXPONENT));
}

/**
 * Temperature that gives a density altitude at a pressure.
 * @param p static pressure, Pa, above 0
 * @param Hd density altitude, m, -5000 to 11000
 * @returns temperature (virtual), K
 * @throws OutOfRange outside the standard atmosphere
 * @source inverse of densityAltitude
 */
export function temperatureForDensityAltitude(p: number, Hd: number): number {
  if (!(p > 0)) throw new OutOfRange('pressure', p, 'above 0 Pa');
  return p / (R * standardDay(Hd).rho);
}
