/** Pressure and altitude: what an altimeter does, and back. */
import { OutOfRange } from '../remarks/index.ts';
import { g0, H_TROPOPAUSE, L, p0, R, standardDay, T0 } from './standard-atmosphere.ts';

const EXPONENT = (L * R) / g0;

/**
 * Pressure altitude of a static pressure.
 * @param p static pressure, Pa, 5475 to 177700 (20000 to -5000 m)
 * @returns pressure altitude, m geopotential
 * @throws OutOfRange outside the standard atmosphere's heights
 * @source [icao-7488]
 */
export function pressureAltitude(p: number): number {
  if (!(p > 5400 && p < 178000)) throw new OutOfRange('pressure', p, '5400 to 178000 Pa');
  const H = (T0 / L) * (1 - (p / p0) ** EXPONENT);
  if (H <= H_TROPOPAUSE) return H;
  const edge = standardDay(H_TROPOPAUSE);
  return H_TROPOPAUSE + ((R * edge.T) / g0) * Math.log(edge.p / p);
}

/**
 * Static pressure at a pressure altitude.
 * @param Hp pressure altitude, m, -5000 to 20000
 * @returns pressure, Pa
 * @throws OutOfRange outside the range
 * @source [icao-7488]
 */
export function pressureAt(Hp: number): number {
  return standardDay(Hp).p;
}

/**
 * Pressure altitude from what an altimeter shows with its setting.
 * @param indicated indicated altitude, m
 * @param setting altimeter setting, Pa
 * @returns pressure altitude, m
 * @throws OutOfRange when the setting is outside the standard atmosphere
 * @source the altimeter's own scale is the standard atmosphere shifted by the setting: [icao-7488]
 */
export function pressureAltitudeFromIndicated(indicated: number, setting: number): number {
  return indicated + pressureAltitude(setting);
}

/**
 * Station pressure at a field from its altimeter setting: the setting that makes an altimeter show the elevation.
 * @param setting altimeter setting, Pa
 * @param elevation field elevation, m
 * @returns station pressure, Pa
 * @throws OutOfRange outside the standard atmosphere
 * @source [icao-7488]
 */
export function stationPressure(setting: number, elevation: number): number {
  return pressureAt(pressureAltitudeFromIndicated(elevation, setting));
}

/**
 * Station pressure behind an altimeter setting as a weather office computes it: 288 K, and 0.3 hPa because an
 * altimeter stands some 3 m above the ramp. Some 0.2 to 0.3 hPa above `stationPressure`; never mix the two.
 * @param setting altimeter setting from a weather report, Pa
 * @param elevation station elevation, m, -500 to 5000
 * @returns station pressure, Pa
 * @throws OutOfRange outside the elevations
 * @source [smithsonian] altimeter-setting equation, p. 269
 */
export function stationPressureFromReport(setting: number, elevation: number): number {
  if (!(elevation >= -500 && elevation <= 5000)) throw new OutOfRange('elevation', elevation, '-500 to 5000 m');
  const n = EXPONENT;
  const reduced = setting ** n - (p0 ** n * L * elevation) / 288;
  return reduced ** (1 / n) + 30;
}

/**
 * Altitude correction to add for an error of the sensed static pressure.
 * @param dps sensed less true static pressure, Pa
 * @param Hp pressure altitude, m
 * @returns correction to add to the reading, m; the altimeter knows no density but the standard day's
 * @throws OutOfRange outside the standard atmosphere
 * @source hydrostatic relation at standard density, [icao-7488]
 */
export function altitudeCorrection(dps: number, Hp: number): number {
  return dps / (standardDay(Hp).rho * g0);
}

/**
 * Tapeline (geometric) rate from the rate of pressure altitude.
 * @param rate rate of pressure altitude, m/s
 * @param Tv virtual temperature of the air, K
 * @param Hp pressure altitude, m
 * @returns geometric rate, m/s
 * @throws OutOfRange outside the standard atmosphere
 * @source hydrostatic relation: dh/dHp = Tv / T_standard(Hp); gravity's fall with height (0.06 % at 2000 m) neglected
 */
export function tapelineRate(rate: number, Tv: number, Hp: number): number {
  return (rate * Tv) / standardDay(Hp).T;
}
