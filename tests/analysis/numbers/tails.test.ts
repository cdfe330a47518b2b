import { describe, expect, it } from 'vitest';
import {
  chiSquareCdf,
  chiSquareQuantile,
  correctedAkaike,
  coverageFactor,
  incompleteGamma,
  rankModels,
  ratioInterval,
} from '../../../analysis/numbers/index.ts';
import { OutOfRange } from '../../../analysis/remarks/index.ts';

describe('chi-square and incomplete gamma', () => {
  it.each([
    [0.95, 1, 3.841458820694124],
    [0.95, 4, 9.487729036781154],
    [0.975, 11, 21.9200492610212],
    [0.05, 7, 2.167349909298057],
    [0.999, 30, 59.70306430442994],
  ])(
    'quantile %d of %d degrees of freedom (SciPy 1.17.1; printed tables give its first four digits)',
    (p, nu, want) => {
      expect(Math.abs(chiSquareQuantile(p, nu) / want - 1)).toBeLessThan(1e-10);
      expect(chiSquareCdf(want, nu)).toBeCloseTo(p, 11);
    },
  );

  it.each([
    [0.5, 0.3, 0.5614219739190003],
    [3, 2.5, 0.45618688411667035],
    [10, 14.2, 0.8997364748565644],
    [120, 100, 0.02823039396486565],
  ])('P(%d, %d) (SciPy 1.17.1)', (a, x, want) => {
    expect(Math.abs(incompleteGamma(a, x) / want - 1)).toBeLessThan(1e-11);
  });

  it('has its ends and refuses what is outside', () => {
    expect(incompleteGamma(2, 0)).toBe(0);
    expect(incompleteGamma(2, Number.POSITIVE_INFINITY)).toBe(1);
    for (const wrong of [() => incompleteGamma(0, 1), () => incompleteGamma(1, -1), () => chiSquareCdf(1, 0)])
      expect(wrong).toThrow(OutOfRange);
    expect(() => chiSquareQuantile(1, 3)).toThrow(OutOfRange);
    expect(() => chiSquareQuantile(0.5, 0)).toThrow(OutOfRange);
  });
});

describe('model comparison', () => {
  it('follows the formula', () => {
    // n 20, RSS 4, line: k = 3; 20 ln 0.2 + 6 + 24/16
    expect(correctedAkaike(4, 20, 2)).toBeCloseTo(20 * Math.log(0.2) + 7.5, 12);
  });

  it('ranks on the same data, leaves out what is too rich, and weighs', () => {
    const ranked = rankModels(
      [
        { name: 'constant', rss: 9, parameters: 1 },
        { name: 'line', rss: 4, parameters: 2 },
        { name: 'too rich', rss: 0.1, parameters: 16 },
      ],
      20,
    );
    expect(ranked.map((one) => one.name)).toEqual(['line', 'constant']);
    expect(ranked.reduce((sum, one) => sum + one.weight, 0)).toBeCloseTo(1, 12);
    expect(() => correctedAkaike(1, 6, 2)).toThrow(OutOfRange);
    expect(() => correctedAkaike(0, 20, 2)).toThrow(OutOfRange);
  });
});

describe('interval of a ratio', () => {
  it('is what trying every ratio gives', () => {
    const covariance = { aa: 0.04, ab: 0.01, bb: 0.09 };
    const { low, high } = ratioInterval(2, 3, covariance, 8);
    const t = coverageFactor(8);
    const kept = Array.from({ length: 400_001 }, (_, i) => i * 1e-5).filter((r) => {
      const u = Math.sqrt(covariance.aa - 2 * r * covariance.ab + r * r * covariance.bb);
      return Math.abs(2 - 3 * r) <= t * u;
    });
    expect(Math.abs((low ?? 9) - (kept[0] ?? 0))).toBeLessThan(2e-5);
    expect(Math.abs((high ?? 9) - (kept[kept.length - 1] ?? 0))).toBeLessThan(2e-5);
  });

  it('is the plain interval when the denominator is exact, and open when it may be zero', () => {
    const plain = ratioInterval(6, 2, { aa: 0.25, ab: 0, bb: 0 }, Number.POSITIVE_INFINITY);
    expect(plain.high).toBeCloseTo(3 + 1.959963985 * 0.25, 8);
    expect(ratioInterval(6, 0.1, { aa: 0.25, ab: 0, bb: 0.04 }, 5)).toMatchObject({ low: null, high: null });
  });
});
