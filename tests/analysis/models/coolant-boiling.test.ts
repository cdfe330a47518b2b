import { describe, expect, it } from 'vitest';
import { boilingTemperature, waterMoleFraction, waterSaturationPressure } from '../../../analysis/models/index.ts';
import { OutOfRange } from '../../../analysis/remarks/index.ts';

describe('saturation of water', () => {
  it('passes the normal boiling point, the triple point and the critical point', () => {
    // 373.124 K at 101 325 Pa; 611.657 Pa at 273.16 K; 22.064 MPa at 647.096 K, from memory
    expect(Math.abs(waterSaturationPressure(373.124) - 101_325)).toBeLessThan(5);
    expect(Math.abs(waterSaturationPressure(273.16) - 611.657)).toBeLessThan(0.1);
    expect(waterSaturationPressure(647.096)).toBe(22.064e6);
    expect(() => waterSaturationPressure(700)).toThrow(OutOfRange);
  });

  it('rises as Clausius and Clapeyron say near the boiling point', () => {
    // d ln p/dT = L M/(R T^2), heat of vaporisation 2257 kJ/kg, vapour about 1.5 % from ideal there (from memory)
    const slope = (Math.log(waterSaturationPressure(373.6)) - Math.log(waterSaturationPressure(372.6))) / 1;
    const expected = (2.257e6 * 0.0180153) / (8.314462 * 373.1 ** 2);
    expect(Math.abs(slope / expected - 1)).toBeLessThan(0.02);
  });
});

describe('boiling of a mix', () => {
  it('is that of water without glycol, rises with glycol and pressure, and turns round exactly', () => {
    const at = (fraction: number, pressure: number) => boilingTemperature({ glycol: 'ethylene', fraction, pressure });
    expect(Math.abs(at(0, 101_325) - 373.124)).toBeLessThan(0.002);
    expect(at(0.5, 101_325)).toBeGreaterThan(at(0.3, 101_325));
    expect(at(0.5, 211_325)).toBeGreaterThan(at(0.5, 101_325) + 15);
    const T = at(0.5, 180_000);
    expect(waterMoleFraction('ethylene', 0.5) * waterSaturationPressure(T)).toBeCloseTo(180_000, 3);
  });

  it('refuses what the ideal mix cannot say', () => {
    expect(() => boilingTemperature({ glycol: 'ethylene', fraction: 0.95, pressure: 1e5 })).toThrow(OutOfRange);
    expect(() => boilingTemperature({ glycol: 'ethylene', fraction: 0.5, pressure: 5 })).toThrow(OutOfRange);
    expect(() => waterMoleFraction('propylene', 1.2)).toThrow(OutOfRange);
  });

  it('takes fewer molecules of propylene than of ethylene glycol in the same volume', () => {
    expect(waterMoleFraction('propylene', 0.5)).toBeGreaterThan(waterMoleFraction('ethylene', 0.5));
    expect(waterMoleFraction('ethylene', 0)).toBe(1);
  });
});
