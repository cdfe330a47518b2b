import { describe, expect, it } from 'vitest';
import { g0, impactPressure } from '../../../analysis/air/index.ts';
import {
  type AirspeedCalibration,
  airspeedCalibrationOf,
  calibrate,
  calibratedRange,
  calibrationCovariance,
  liftOverImpact,
} from '../../../analysis/models/index.ts';
import { multivariateT, seededRandom } from '../../../analysis/numbers/index.ts';
import { OutOfRange } from '../../../analysis/remarks/index.ts';

const calibration: AirspeedCalibration = {
  format: 'airspeed-calibration-1',
  mass: 1000,
  wingArea: 12,
  commonStatic: true,
  legScatter: 0.3,
  legScatterNu: 14,
  curves: [
    {
      flaps: 'up',
      centre: 0.7,
      scale: 0.4,
      coefficients: [0.01, 0.03, 0.005],
      covariance: [
        [4e-6, 1e-6, 0],
        [1e-6, 9e-6, -1e-6],
        [0, -1e-6, 1.6e-5],
      ],
      nu: 14,
      lackOfFit: 0.05,
      lackOfFitNu: 60,
      shifted: [{ sensor: 'outside-air-temperature', nu: 50, coefficients: [0.013, 0.03, 0.005] }],
      flown: [38, 65],
      speeds: 6,
      legs: 24,
    },
  ],
};

describe('airspeed calibration', () => {
  it('adds the static error to the impact pressure', () => {
    const { cas, staticError } = calibrate(calibration, 50);
    const x = (1000 * g0) / (12 * impactPressure(50));
    const z = (x - 0.7) / 0.4;
    const ratio = 0.01 + 0.03 * z + 0.005 * z * z;
    expect(impactPressure(cas)).toBeCloseTo(impactPressure(50) * (1 + ratio), 6);
    expect(staticError).toBeCloseTo(ratio * impactPressure(50), 6);
  });

  it('goes with lift: a heavier airplane errs at a higher speed as the lighter did at a lower', () => {
    const light = calibrate(calibration, 45);
    const heavy = calibrate(calibration, 45 * Math.sqrt(1.2), { mass: 1200 });
    const share = (cas: number, ias: number) => impactPressure(cas) / impactPressure(ias);
    // qc goes with speed squared but for compressibility, a tenth of a per cent here.
    expect(share(heavy.cas, 45 * Math.sqrt(1.2))).toBeCloseTo(share(light.cas, 45), 4);
  });

  it('holds for the mass flown only where no mass is known', () => {
    const unknown = { ...calibration, mass: null };
    expect(liftOverImpact(unknown, 45, { mass: 1500 })).toBe(liftOverImpact(unknown, 45));
  });

  it('has the covariance that drawing its coefficients gives', () => {
    const speeds = [42, 55];
    const stated = calibrationCovariance(calibration, speeds);
    const curve = calibration.curves[0];
    if (!curve) throw new Error('made above');
    const random = seededRandom('calibration');
    const draw = multivariateT(random, curve.coefficients, curve.covariance, Number.POSITIVE_INFINITY);
    const values = Array.from({ length: 20_000 }, () => {
      const common = 0.003 * random.normal();
      const [c0 = 0, ...rest] = draw();
      const drawn = { ...calibration, curves: [{ ...curve, coefficients: [c0 + common, ...rest] }] };
      return speeds.map((ias) => calibrate(drawn, ias).cas);
    });
    const mean = speeds.map((_, i) => values.reduce((sum, v) => sum + (v[i] ?? 0) / values.length, 0));
    const moment = (i: number, j: number) =>
      values.reduce((sum, v) => sum + ((v[i] ?? 0) - (mean[i] ?? 0)) * ((v[j] ?? 0) - (mean[j] ?? 0)), 0) /
      values.length;
    const lack = curve.lackOfFit ** 2;
    expect(Math.abs(moment(0, 0) / ((stated[0]?.[0] ?? 0) - lack) - 1)).toBeLessThan(0.05); // 20 000 draws: 1 %
    expect(Math.abs(moment(1, 1) / ((stated[1]?.[1] ?? 0) - lack) - 1)).toBeLessThan(0.05);
    expect(Math.abs(moment(0, 1) / (stated[0]?.[1] ?? 1) - 1)).toBeLessThan(0.08);
    const { u95, parts } = calibrate(calibration, 42);
    expect(Math.hypot(...Object.values(parts).map((part) => part ?? 0))).toBeCloseTo(u95, 9);
    expect(u95 / Math.sqrt(stated[0]?.[0] ?? 1)).toBeGreaterThan(1.96);
  });

  it('is refused beyond the airspeeds flown and for settings not flown', () => {
    expect(calibratedRange(calibration)).toEqual([38, 65]);
    expect(calibratedRange(calibration, 'landing')).toBeNull();
    expect(calibrate(calibration, 37.6).cas).toBeGreaterThan(0); // within a leg's own wander
    for (const wrong of [
      () => calibrate(calibration, 37),
      () => calibrate(calibration, 66),
      () => calibrate(calibration, 50, { flaps: 'landing' }),
      () => liftOverImpact(calibration, 0),
      () => calibrationCovariance(calibration, [50, 80]),
    ])
      expect(wrong).toThrow(OutOfRange);
  });

  it('is read from a result, or not there', () => {
    expect(airspeedCalibrationOf({ calibration: JSON.parse(JSON.stringify(calibration)) })).toEqual(calibration);
    expect(airspeedCalibrationOf({ calibration: { format: 'other' } })).toBeNull();
    expect(airspeedCalibrationOf(undefined)).toBeNull();
  });
});
