/** Humid air: vapour pressure and the virtual temperature that stands for it in density and hydrostatics. */
import { OutOfRange } from '../remarks/index.ts';
import { fromSi, toSi } from '../units/index.ts';

/**
 * Saturation vapour pressure over water, which at the dew point is the vapour pressure of the air.
 * @param T temperature (dew point), K, 223 to 333
 * @returns vapour pressure, Pa
 * @throws OutOfRange outside the range of the relation
 * @source Tetens' relation, from memory [memory]; within 0.2 % of handbook values from 0 to 40 degC in tests/outside
 */
export function vapourPressure(T: number): number {
  const celsius = fromSi(T, 'degC');
  if (!(celsius >= -50 && celsius <= 60)) throw new OutOfRange('dew point', T, '223 to 333 K');
  return toSi(6.1078 * 10 ** ((7.5 * celsius) / (celsius + 237.3)), 'hPa');
}

/**
 * Virtual temperature: the temperature at which dry air has the density of this humid air.
 * @param T temperature, K, above 0
 * @param e vapour pressure, Pa, 0 to a tenth of p
 * @param p static pressure, Pa, above 0
 * @returns virtual temperature, K
 * @throws OutOfRange when an argument is outside its range
 * @source perfect gas mixture, molar mass ratio 0.622 [memory]: Tv = T / (1 - 0.378 e/p)
 */
export function virtualTemperature(T: number, e: number, p: number): number {
  if (!(T > 0)) throw new OutOfRange('temperature', T, 'above 0 K');
  if (!(p > 0)) throw new OutOfRange('pressure', p, 'above 0 Pa');
  if (!(e >= 0 && e < p / 10)) throw new OutOfRange('vapour pressure', e, '0 to a tenth of the pressure');
  return T / (1 - (0.378 * e) / p);
}
