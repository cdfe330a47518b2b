import { describe, expect, it } from 'vitest';
import { toSi } from '../../../analysis/units/index.ts';
import {
  calibratedAirspeed,
  density,
  densityAltitude,
  pressureAltitudeOf,
  pressureAt,
  standardTemperature,
  trueAirspeed,
} from '../../../sample-tests/generate/air.ts';

describe('ICAO Doc 7488: standard atmosphere, pressure and density by geopotential altitude', () => {
  it.each([
    [1000, 89874.6, 1.11164],
    [2000, 79495.2, 1.00649],
    [5000, 54019.9, 0.736116],
  ])('%d m', (height, pressure, rho) => {
    // Rounding of the table.
    expect(Math.abs(pressureAt(height) - pressure)).toBeLessThan(0.06);
    expect(Math.abs(density(pressureAt(height), standardTemperature(height)) - rho)).toBeLessThan(6e-6);
    expect(pressureAltitudeOf(pressureAt(height))).toBeCloseTo(height, 6);
    expect(densityAltitude(density(pressureAt(height), standardTemperature(height)))).toBeCloseTo(height, 6);
  });
});

describe('airspeeds of the samples', () => {
  it('at sea level on a standard day true is calibrated, and the two conversions undo each other', () => {
    const cas = toSi(120, 'kt');
    expect(trueAirspeed(cas, pressureAt(0), standardTemperature(0))).toBeCloseTo(cas, 9);
    const [pressure, temperature] = [pressureAt(2500), standardTemperature(2500) + 12];
    expect(calibratedAirspeed(trueAirspeed(cas, pressure, temperature), pressure, temperature)).toBeCloseTo(cas, 9);
  });

  it('at 100 kt true speed is equivalent speed over the root of the density ratio, within compressibility', () => {
    const cas = toSi(100, 'kt');
    const [pressure, temperature] = [pressureAt(2000), standardTemperature(2000) + 10];
    const ratio = density(pressure, temperature) / density(pressureAt(0), standardTemperature(0));
    expect(Math.abs((trueAirspeed(cas, pressure, temperature) * Math.sqrt(ratio)) / cas - 1)).toBeLessThan(0.002);
  });
});
