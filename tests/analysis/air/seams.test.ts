/** Round trips, limits and seams of the air room; values are checked in tests/outside. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  a0,
  altitudeCorrection,
  angleBetween,
  calibratedAirspeed,
  casFromEas,
  casFromTas,
  components,
  densityAltitude,
  directionOf,
  equivalentAirspeed,
  geometric,
  geopotential,
  impactPressure,
  p0,
  pressureAltitude,
  pressureAt,
  soundSpeed,
  speedOf,
  standardDay,
  staticTemperature,
  T0,
  tapelineRate,
  temperatureForDensityAltitude,
  trueAirspeed,
  virtualTemperature,
  windFrom,
  wrapTurn,
} from '../../../analysis/air/index.ts';
import { OutOfRange } from '../../../analysis/remarks/index.ts';
import { toSi } from '../../../analysis/units/index.ts';

const height = fc.double({ min: -1000, max: 12000, noNaN: true });
// below 1 m/s the impact pressure itself has lost the digits: qc/p is under 1e-5
const cas = fc.double({ min: 1, max: 130, noNaN: true });
const air = fc.double({ min: 230, max: 320, noNaN: true });

describe('round trips', () => {
  it('pressure and altitude', () => {
    fc.assert(
      fc.property(height, (H) => {
        expect(Math.abs(pressureAltitude(pressureAt(H)) - H)).toBeLessThan(1e-6);
      }),
    );
  });

  it('calibrated, true and equivalent airspeed', () => {
    fc.assert(
      fc.property(cas, height, air, (v, H, T) => {
        const p = pressureAt(H);
        expect(Math.abs(casFromTas(trueAirspeed(v, p, T), p, T) - v)).toBeLessThan(1e-6);
        expect(Math.abs(casFromEas(equivalentAirspeed(v, p), p) - v)).toBeLessThan(1e-6);
        expect(Math.abs(calibratedAirspeed(impactPressure(v)) - v)).toBeLessThan(1e-6);
      }),
    );
  });

  it('density altitude and temperature, geometric and geopotential height', () => {
    fc.assert(
      fc.property(fc.double({ min: -500, max: 8000, noNaN: true }), air, (H, T) => {
        const p = pressureAt(H);
        expect(Math.abs(temperatureForDensityAltitude(p, densityAltitude(p, T)) - T)).toBeLessThan(1e-8);
        expect(Math.abs(geometric(geopotential(H)) - H)).toBeLessThan(1e-8);
      }),
    );
  });
});

describe('exact limits', () => {
  it('at sea level on the standard day the airspeeds agree', () => {
    for (const v of [10, 50, 120]) {
      expect(trueAirspeed(v, p0, T0)).toBeCloseTo(v, 9);
      expect(equivalentAirspeed(v, p0)).toBeCloseTo(v, 9);
    }
    expect(soundSpeed(T0)).toBe(a0);
    expect(densityAltitude(p0, T0)).toBeCloseTo(0, 8);
  });

  it('a probe without recovery, and dry air, change nothing', () => {
    expect(staticTemperature(280, 0.3, 0)).toBe(280);
    expect(virtualTemperature(280, 0, p0)).toBe(280);
  });

  it('on the standard day the tapeline rate is the rate of pressure altitude', () => {
    expect(tapelineRate(5, standardDay(2000).T, 2000)).toBeCloseTo(5, 12);
  });

  it('a static error of one hectopascal at sea level is 8.3 m, the trade’s 27 feet', () => {
    // hydrostatic relation: 100 Pa / (1.225 kg/m3 x 9.80665 m/s2)
    expect(altitudeCorrection(100, 0)).toBeCloseTo(8.324, 2);
  });
});

describe('seams', () => {
  it('pressure has no step at the tropopause', () => {
    expect(Math.abs(standardDay(11000 - 1e-6).p - standardDay(11000 + 1e-6).p)).toBeLessThan(1e-4);
    expect(Math.abs(standardDay(11000 - 1e-6).T - standardDay(11000 + 1e-6).T)).toBeLessThan(1e-7);
  });

  it('directions wrap', () => {
    expect(wrapTurn(-0.1)).toBeCloseTo(2 * Math.PI - 0.1, 12);
    expect(angleBetween(0.1, 2 * Math.PI - 0.1)).toBeCloseTo(0.2, 12);
    const north = components(10, 0);
    expect([speedOf(north), directionOf(north)]).toEqual([10, 0]);
    expect(windFrom(components(10, toSi(65, 'deg')))).toBeCloseTo(toSi(245, 'deg'), 12);
  });
});

describe('outside its domain a formula refuses', () => {
  it.each([
    ['height', () => standardDay(30000)],
    ['negative airspeed', () => impactPressure(-1)],
    ['airspeed past Mach 0.9', () => trueAirspeed(300, 20000, 250)],
    ['pressure', () => pressureAltitude(0)],
    ['temperature', () => soundSpeed(0)],
    ['recovery', () => staticTemperature(280, 0.3, 1.4)],
    ['vapour pressure', () => virtualTemperature(280, 20000, p0)],
    ['density above the tropopause', () => densityAltitude(15000, 220)],
  ])('%s', (_, call) => {
    expect(call).toThrow(OutOfRange);
  });
});
