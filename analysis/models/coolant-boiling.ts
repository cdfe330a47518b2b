/** When a mix of water and glycol boils: saturation of the water in it, glycol vapour neglected. */
import { OutOfRange } from '../remarks/index.ts';

const CRITICAL_TEMPERATURE = 647.096; // K
const CRITICAL_PRESSURE = 22.064e6; // Pa

/**
 * Saturation pressure of water.
 * @param T temperature, K, 273.16 to 647
 * @returns Pa
 * @throws OutOfRange outside that range
 * @source [iapws-saturation], coefficients from memory; 373.124 K at 101 325 Pa anchors them
 */
export function waterSaturationPressure(T: number): number {
  if (!(T >= 273.16 && T <= CRITICAL_TEMPERATURE)) throw new OutOfRange('temperature', T, '273.16 to 647.096 K');
  const x = 1 - T / CRITICAL_TEMPERATURE;
  const sum =
    -7.85951783 * x +
    1.84408259 * x ** 1.5 -
    11.7866497 * x ** 3 +
    22.6807411 * x ** 3.5 -
    15.9618719 * x ** 4 +
    1.80122502 * x ** 7.5;
  return CRITICAL_PRESSURE * Math.exp((CRITICAL_TEMPERATURE / T) * sum);
}

export type Glycol = 'ethylene' | 'propylene';

// Density at 20 degC (kg/m3) and molar mass (kg/mol) of the pure liquids.
const LIQUID = {
  water: { density: 998.2, molarMass: 0.0180153 },
  ethylene: { density: 1113.5, molarMass: 0.0620678 },
  propylene: { density: 1036, molarMass: 0.0760944 },
} as const;

/**
 * Share of water molecules in a mix.
 * @param glycol which, name
 * @param fraction volume fraction of glycol, 0 to 1
 * @returns mole fraction of water, 0 to 1
 * @throws OutOfRange when the fraction is outside 0 to 1
 * @source densities and molar masses of the pure liquids [memory]; volumes taken as additive
 */
export function waterMoleFraction(glycol: Glycol, fraction: number): number {
  if (!(fraction >= 0 && fraction <= 1)) throw new OutOfRange('glycol fraction', fraction, '0 to 1');
  const moles = (liquid: { density: number; molarMass: number }, share: number) =>
    (share * liquid.density) / liquid.molarMass;
  const water = moles(LIQUID.water, 1 - fraction);
  return water / (water + moles(LIQUID[glycol], fraction));
}

/** The mix and the pressure over it. */
export interface BoilingCase {
  glycol: Glycol;
  /** volume fraction of glycol, 0 to 0.9 */
  fraction: number;
  /** absolute, Pa: field or flight pressure plus what the cap holds (a cap holds a gauge pressure) */
  pressure: number;
}

/** Published figures for one mix spread by this much; standard uncertainty, K, common practice. */
export const BOILING_POINT_U = 3;

/**
 * Boiling temperature of the mix.
 * @param mix glycol, its volume fraction and the absolute pressure, object
 * @returns K, to within BOILING_POINT_U
 * @throws OutOfRange when the fraction is above 0.9 or the pressure outside 2 kPa to 1 MPa
 * @source ideal solution (Raoult) over [iapws-saturation], glycol vapour neglected
 */
export function boilingTemperature(mix: BoilingCase): number {
  if (!(mix.fraction <= 0.9)) throw new OutOfRange('glycol fraction', mix.fraction, '0 to 0.9: its own vapour counts');
  if (!(mix.pressure >= 2e3 && mix.pressure <= 1e6)) throw new OutOfRange('pressure', mix.pressure, '2 kPa to 1 MPa');
  const water = waterMoleFraction(mix.glycol, mix.fraction);
  let low = 273.16;
  let high = 640;
  for (let i = 0; i < 60; i += 1) {
    const T = (low + high) / 2;
    if (water * waterSaturationPressure(T) < mix.pressure) low = T;
    else high = T;
  }
  return (low + high) / 2;
}

/** A cap opens within this share of its marking, and the hottest coolant is this much hotter than the sensor, K. */
export const CAP_SHARE = 0.1;
export const HOTTEST_SPOT = 3;

export interface UnderCap {
  /** the mix boils at, K */
  boils: number;
  /** what the sensor reads when the hottest coolant boils, K */
  sensor: number;
  /** standard uncertainty from the cap's marking, K */
  capU: number;
}

/**
 * Where coolant boils under its cap: a cap holds a gauge pressure, so it boils lower the higher one is.
 * @param mix glycol and its volume fraction, object
 * @param cap pressure marked on the cap, gauge, Pa
 * @param outside pressure around it, absolute, Pa
 * @returns boiling temperature, the sensor's reading then, and the cap's doubt
 * @throws OutOfRange as boilingTemperature
 * @source ideal solution over [iapws-saturation]; cap within 10 %, hottest spot 3 K over the sensor [practice]
 */
export function boilingUnderCap(mix: Omit<BoilingCase, 'pressure'>, cap: number, outside: number): UnderCap {
  const at = (held: number) => boilingTemperature({ ...mix, pressure: outside + held });
  const boils = at(cap);
  return { boils, sensor: boils - HOTTEST_SPOT, capU: (boils - at((1 - CAP_SHARE) * cap)) / 2 };
}
