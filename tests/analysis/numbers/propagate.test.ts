import { describe, expect, it } from 'vitest';
import {
  combineUncertainty,
  effectiveDegreesOfFreedom,
  measuredWith,
  propagateByShift,
} from '../../../analysis/numbers/index.ts';

describe('combining parts', () => {
  it('has parts that add in quadrature to U95, equal kinds merged', () => {
    const all = combineUncertainty([
      { u: 0.3, nu: 8, part: 'noise' },
      { u: 0.4, nu: 50, part: 'calibration' },
      { u: 0.2, nu: 50, part: 'calibration' },
    ]);
    const { noise = 0, calibration = 0, fit } = all.parts;
    expect(Math.hypot(noise, calibration)).toBeCloseTo(all.u95, 12);
    expect(calibration / all.k).toBeCloseTo(Math.hypot(0.4, 0.2), 12);
    expect(fit).toBeUndefined();
  });

  it('keeps the degrees of freedom of a lone part, and takes infinity when nothing is doubtful', () => {
    expect(effectiveDegreesOfFreedom([{ u: 2, nu: 7 }])).toBeCloseTo(7, 12);
    expect(effectiveDegreesOfFreedom([{ u: 2, nu: Number.POSITIVE_INFINITY }])).toBe(Number.POSITIVE_INFINITY);
    expect(measuredWith(5, [])).toEqual({ value: 5, u95: 0, parts: {} });
  });

  it('cancels a common offset in a difference, and keeps it in a sum', () => {
    const difference = propagateByShift({ sensor: 0.5 }, ({ sensor = 0 }) => 90 + sensor - (70 + sensor));
    const sum = propagateByShift({ hot: 0.3, cold: 0.4 }, ({ hot = 0, cold = 0 }) => 90 + hot - (20 + cold));
    expect(difference.u).toBe(0);
    expect(sum.u).toBeCloseTo(0.5, 10);
    expect(sum.bySensor.cold).toBeCloseTo(-0.4, 10);
  });
});
