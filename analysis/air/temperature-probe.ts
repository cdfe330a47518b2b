/** Static air temperature from a probe that reads part of the ram rise. */
import { OutOfRange } from '../remarks/index.ts';
import { GAMMA, R } from './standard-atmosphere.ts';

/** where the configuration does not know the recovery factor: value, and rectangular half-width */
export const RECOVERY_UNKNOWN = { value: 0.8, halfWidth: 0.2 } as const;

/**
 * Static temperature from the indicated one at a Mach number. Mach needs no temperature, so nothing is iterated.
 * @param Ti indicated temperature, K, above 0
 * @param mach Mach number, 0 to 1
 * @param K recovery factor, 0 (none) to 1 (full ram rise)
 * @returns static temperature, K
 * @throws OutOfRange when an argument is outside its range
 * @source [rp-1046]: T = Ti / (1 + 0.2 K M^2)
 */
export function staticTemperature(Ti: number, mach: number, K: number): number {
  if (!(Ti > 0)) throw new OutOfRange('indicated temperature', Ti, 'above 0 K');
  if (!(mach >= 0 && mach <= 1)) throw new OutOfRange('Mach number', mach, '0 to 1');
  if (!(K >= 0 && K <= 1)) throw new OutOfRange('recovery factor', K, '0 to 1');
  return Ti / (1 + 0.2 * K * mach ** 2);
}

/**
 * Static temperature from the indicated one at a true airspeed.
 * @param Ti indicated temperature, K, above 0
 * @param tas true airspeed, m/s, 0 or more
 * @param K recovery factor, 0 to 1
 * @returns static temperature, K
 * @throws OutOfRange when an argument is outside its range
 * @source energy equation with cp = gamma R / (gamma - 1): T = Ti - K V^2 / (2 cp)
 */
export function staticTemperatureAtSpeed(Ti: number, tas: number, K: number): number {
  if (!(Ti > 0)) throw new OutOfRange('indicated temperature', Ti, 'above 0 K');
  if (!(tas >= 0)) throw new OutOfRange('true airspeed', tas, '0 m/s or more');
  if (!(K >= 0 && K <= 1)) throw new OutOfRange('recovery factor', K, '0 to 1');
  const cp = (GAMMA * R) / (GAMMA - 1);
  return Ti - (K * tas ** 2) / (2 * cp);
}
