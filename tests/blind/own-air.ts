/** Air of the blind flights by formulas of their own: the product's functions stand nowhere in them. */
import type { Random } from '../../analysis/numbers/index.ts';
import { fromSi, toSi } from '../../analysis/units/index.ts';

export const G = 9.80665;
/** Length scale of gusts above 600 m, m: Dryden, from memory. */
export const LENGTH_SCALE = 533;

// Own air: pressure and temperature of the standard lapse, isentropic flow written with specific heats.
export const pressureOf = (h: number) =>
  101325 * Math.exp((G / (287.05287 * 0.0065)) * Math.log(1 - (0.0065 * h) / 288.15));
export const heightOf = (p: number) =>
  (288.15 / 0.0065) * (1 - Math.exp(((287.05287 * 0.0065) / G) * Math.log(p / 101325)));
export const sound = (T: number) => Math.sqrt(1.4 * 287.05287 * T);
export const ram = (v: number, a: number, p: number) => p * Math.expm1(3.5 * Math.log1p((v * v) / (5 * a * a)));
export const speedOfRam = (q: number, a: number, p: number) => a * Math.sqrt(5 * Math.expm1(Math.log1p(q / p) / 3.5));
export const SEA = { a: sound(288.15), p: 101325 };

/** A value on the steps of a recorder that writes in this unit. */
export const stepped = (value: number, unit: string, size: number): number =>
  toSi(Math.round(fromSi(value, unit) / size) * size, unit);

/** First-order noise of a standard deviation and correlation time. */
export function wandering(random: Random, seconds: number, deviation: number): (dt: number) => number {
  let value = deviation * random.normal();
  return (dt) => {
    const r = Math.exp(-dt / seconds);
    value = r * value + deviation * Math.sqrt(1 - r * r) * random.normal();
    return value;
  };
}

/** Dryden's lateral form, (1 + sqrt(3) s T)/(1 + s T)^2 on white noise, as two equal lags with half of each. */
export function lateral(random: Random, seconds: number, deviation: number): (dt: number) => number {
  const first = wandering(random, seconds, deviation);
  let second = 0;
  return (dt) => {
    const x = first(dt);
    second += ((x - second) * dt) / seconds;
    return (Math.sqrt(3) * x + (1 - Math.sqrt(3)) * second) / Math.sqrt(2);
  };
}
