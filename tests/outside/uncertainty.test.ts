/** Printed t tables and the worked examples of the Guide (JCGM 100), recalled from memory; each named by its place. */
import { describe, expect, it } from 'vitest';
import {
  combineUncertainty,
  coverageFactor,
  effectiveDegreesOfFreedom,
  studentTQuantile,
} from '../../analysis/numbers/index.ts';

describe('Table of Student t, two-sided 95 % (any statistics textbook, from memory)', () => {
  it.each([
    [1, 12.706],
    [2, 4.303],
    [3, 3.182],
    [4, 2.776],
    [5, 2.571],
    [10, 2.228],
    [20, 2.086],
    [30, 2.042],
    [60, 2.0],
    [120, 1.98],
    [Number.POSITIVE_INFINITY, 1.96],
  ])('nu %d: %d', (nu, printed) => {
    expect(Math.abs(coverageFactor(nu) - printed)).toBeLessThan(0.00051); // last printed digit
  });
});

describe('JCGM 100 (Guide), table G.2, from memory', () => {
  it.each([
    [1, 0.9545, 13.97],
    [2, 0.9545, 4.53],
    [3, 0.9545, 3.31],
    [10, 0.9545, 2.28],
    [50, 0.9545, 2.05],
    [1, 0.99, 63.66],
    [16, 0.99, 2.92],
  ])('nu %d, p %d: %d', (nu, p, printed) => {
    expect(Math.abs(studentTQuantile(0.5 + p / 2, nu) - printed)).toBeLessThan(0.0051); // last printed digit
  });
});

describe('JCGM 100 (Guide), G.4.1 example: product of three inputs, relative uncertainties in %, from memory', () => {
  const sources = [
    { u: 0.25, nu: 9, part: 'noise' },
    { u: 0.57, nu: 4, part: 'calibration' },
    { u: 0.82, nu: 14, part: 'fit' },
  ] as const;

  it('u_c 1.03, nu_eff 19.0, t95 2.09, U95 2.2', () => {
    const combined = combineUncertainty(sources);
    expect(Math.abs(combined.u - 1.03)).toBeLessThan(0.005);
    expect(Math.abs(combined.nu - 19)).toBeLessThan(0.1);
    expect(Math.abs(combined.k - 2.09)).toBeLessThan(0.005);
    expect(Math.abs(combined.u95 - 2.2)).toBeLessThan(0.06); // printed as 2.2 from 2.09 x 1.03
  });
});

describe('JCGM 100 (Guide), H.1: end gauge, from memory', () => {
  const parts = [
    { u: 25, nu: 18 },
    { u: 9.7, nu: 25.6 },
    { u: 2.9, nu: 50 },
    { u: 16.6, nu: 2 },
  ];

  it('u_c 32 nm, nu_eff 16.7, t99(16) 2.92, U99 93 nm', () => {
    const u = Math.hypot(...parts.map((one) => one.u));
    const nu = effectiveDegreesOfFreedom(parts);
    expect(Math.abs(u - 32)).toBeLessThan(0.5);
    expect(Math.abs(nu - 16.7)).toBeLessThan(0.15); // the Guide carries 32, we carry 31.67
    expect(Math.abs(studentTQuantile(0.995, Math.floor(nu)) * 32 - 93)).toBeLessThan(0.6);
  });
});
