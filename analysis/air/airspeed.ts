/** Airspeeds: impact pressure, calibrated, equivalent, true, Mach. Subsonic, isentropic. */
import { OutOfRange } from '../remarks/index.ts';
import { a0, p0, soundSpeed } from './standard-atmosphere.ts';

/** the relations are refused above this Mach number: nothing here is tested there */
export const MACH_LIMIT = 0.9;

/**
 * Impact pressure of a calibrated airspeed.
 * @param cas calibrated airspeed, m/s, 0 to Mach 0.9 at sea level
 * @returns qc, Pa
 * @throws OutOfRange when negative or past the limit
 * @source definition of CAS, sea-level constants of [icao-7488]; tables of [rp-1046] in tests/outside/airspeed-scale.test.ts
 */
export function impactPressure(cas: number): number {
  const top = a0 * MACH_LIMIT;
  if (!(cas >= 0 && cas <= top)) throw new OutOfRange('calibrated airspeed', cas, `0 to ${top.toFixed(1)} m/s`);
  return isentropicImpactPressure(cas / a0, p0);
}

/**
 * Calibrated airspeed of an impact pressure.
 * @param qc impact pressure, Pa, 0 to 70000
 * @returns calibrated airspeed, m/s
 * @throws OutOfRange when negative or past Mach 0.9 at sea level
 * @source inverse of impactPressure
 */
export function calibratedAirspeed(qc: number): number {
  const cas = a0 * machOf(qc, p0);
  if (cas > a0 * MACH_LIMIT) throw new OutOfRange('impact pressure', qc, `0 to Mach ${MACH_LIMIT} at sea level`);
  return cas;
}

/**
 * Mach number from impact and static pressure.
 * @param qc impact pressure, Pa, 0 or more
 * @param p static pressure, Pa, above 0
 * @returns Mach number
 * @throws OutOfRange when qc is negative or p is not above 0
 * @source isentropic flow of air, gamma 1.4 [rp-1046]
 */
export function machOf(qc: number, p: number): number {
  if (!(qc >= 0)) throw new OutOfRange('impact pressure', qc, '0 Pa or more');
  if (!(p > 0)) throw new OutOfRange('static pressure', p, 'above 0 Pa');
  return Math.sqrt(5 * ((qc / p + 1) ** (2 / 7) - 1));
}

/**
 * The isentropic relation itself, without the guard at Mach 0.9: for tables and scales only, no shock is in it.
 * @param mach Mach number, 0 or more
 * @param p static pressure, Pa
 * @returns qc, Pa
 * @source isentropic flow of air, gamma 1.4 [rp-1046]
 */
export function isentropicImpactPressure(mach: number, p: number): number {
  return p * ((1 + 0.2 * mach ** 2) ** 3.5 - 1);
}

/**
 * True airspeed from calibrated airspeed.
 * @param cas calibrated airspeed, m/s
 * @param p static pressure, Pa
 * @param T static air temperature (virtual where humidity is known), K
 * @returns true airspeed, m/s
 * @throws OutOfRange outside the domain, or above Mach 0.9
 * @source definitions of CAS and Mach [icao-7488]
 */
export function trueAirspeed(cas: number, p: number, T: number): number {
  const mach = machOf(impactPressure(cas), p);
  if (mach > MACH_LIMIT) throw new OutOfRange('Mach number', mach, `0 to ${MACH_LIMIT}`);
  return mach * soundSpeed(T);
}

/**
 * Calibrated airspeed from true airspeed.
 * @param tas true airspeed, m/s, 0 or more
 * @param p static pressure, Pa
 * @param T static air temperature (virtual where humidity is known), K
 * @returns calibrated airspeed, m/s
 * @throws OutOfRange outside the domain, or above Mach 0.9
 * @source inverse of trueAirspeed
 */
export function casFromTas(tas: number, p: number, T: number): number {
  if (!(tas >= 0)) throw new OutOfRange('true airspeed', tas, '0 m/s or more');
  return calibratedAirspeed(impactPressureAtMach(tas / soundSpeed(T), p));
}

/**
 * Impact pressure at a Mach number and static pressure.
 * @param mach Mach number, 0 to 0.9
 * @param p static pressure, Pa, above 0
 * @returns qc, Pa
 * @throws OutOfRange outside the domain
 * @source isentropic flow of air, gamma 1.4 [rp-1046]
 */
export function impactPressureAtMach(mach: number, p: number): number {
  if (!(mach >= 0 && mach <= MACH_LIMIT)) throw new OutOfRange('Mach number', mach, `0 to ${MACH_LIMIT}`);
  if (!(p > 0)) throw new OutOfRange('static pressure', p, 'above 0 Pa');
  return isentropicImpactPressure(mach, p);
}

/**
 * Equivalent airspeed from calibrated airspeed.
 * @param cas calibrated airspeed, m/s
 * @param p static pressure, Pa
 * @returns equivalent airspeed, m/s: true airspeed times the root of sigma, whatever the temperature
 * @throws OutOfRange outside the domain
 * @source EAS = M a0 sqrt(delta), [rp-1046]
 */
export function equivalentAirspeed(cas: number, p: number): number {
  return machOf(impactPressure(cas), p) * a0 * Math.sqrt(p / p0);
}

/**
 * Calibrated airspeed from equivalent airspeed.
 * @param eas equivalent airspeed, m/s, 0 or more
 * @param p static pressure, Pa, above 0
 * @returns calibrated airspeed, m/s
 * @throws OutOfRange outside the domain
 * @source inverse of equivalentAirspeed
 */
export function casFromEas(eas: number, p: number): number {
  if (!(p > 0)) throw new OutOfRange('static pressure', p, 'above 0 Pa');
  return calibratedAirspeed(impactPressureAtMach(eas / (a0 * Math.sqrt(p / p0)), p));
}
