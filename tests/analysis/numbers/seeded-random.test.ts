import { describe, expect, it } from 'vitest';
import { lowerCholesky, multivariateT, seededRandom, studentTCdf } from '../../../analysis/numbers/index.ts';
import { OutOfRange } from '../../../analysis/remarks/index.ts';

describe('seeded random numbers', () => {
  it('repeats itself for a seed and differs between seeds', () => {
    const row = (seed: number | string) => {
      const random = seededRandom(seed);
      return Array.from({ length: 5 }, () => random.uniform());
    };
    expect(row(7)).toEqual(row(7));
    expect(row('abc')).toEqual(row('abc'));
    expect(row(7)).not.toEqual(row(8));
    expect(new Set(Array.from({ length: 2000 }, (_, seed) => row(seed)[0])).size).toBe(2000);
  });

  it('is uniform: chi-square over 100 cells, and no serial correlation', () => {
    const random = seededRandom(1);
    const n = 200_000;
    const cells = new Array<number>(100).fill(0);
    let product = 0;
    let before = random.uniform();
    for (let i = 0; i < n; i += 1) {
      const x = random.uniform();
      const cell = Math.floor(100 * x);
      cells[cell] = (cells[cell] ?? 0) + 1;
      product += (x - 0.5) * (before - 0.5);
      before = x;
    }
    const chi2 = cells.reduce((sum, seen) => sum + (seen - n / 100) ** 2 / (n / 100), 0);
    // 99 degrees of freedom: 0.1 % points of chi-square from memory 60 and 149
    expect(chi2).toBeGreaterThan(60);
    expect(chi2).toBeLessThan(149);
    expect(Math.abs((product / n) * 12)).toBeLessThan(4 / Math.sqrt(n));
  });

  it.each([2.5, 4, 12, Number.POSITIVE_INFINITY])('draws Student t with nu %d: Kolmogorov distance', (nu) => {
    const random = seededRandom(`t${nu}`);
    const n = 20_000;
    const draws = Float64Array.from({ length: n }, () => random.student(nu)).sort();
    const distance = Math.max(...draws.map((t, i) => Math.abs(studentTCdf(t, nu) - (i + 0.5) / n)));
    expect(distance).toBeLessThan(1.95 / Math.sqrt(n)); // 0.1 % point of the Kolmogorov statistic, from memory
  });

  it('draws a multivariate t with the covariance asked for, times nu/(nu - 2)', () => {
    const covariance = [
      [4, 1.2],
      [1.2, 0.9],
    ];
    const nu = 10;
    const draw = multivariateT(seededRandom(3), [5, -1], covariance, nu);
    const rows = Array.from({ length: 40_000 }, draw);
    const mean = [0, 1].map((i) => rows.reduce((sum, row) => sum + (row[i] ?? 0) / rows.length, 0));
    const spread = (i: number, j: number) =>
      rows.reduce((sum, row) => sum + ((row[i] ?? 0) - (mean[i] ?? 0)) * ((row[j] ?? 0) - (mean[j] ?? 0)), 0) /
      rows.length;
    expect(Math.abs((mean[0] ?? 0) - 5)).toBeLessThan(0.05);
    for (const [i, j] of [
      [0, 0],
      [0, 1],
      [1, 1],
    ] as const) {
      // sampling error of a variance at 40 000 draws of t(10) is about 1 %
      expect(Math.abs(spread(i, j) / ((covariance[i]?.[j] ?? 0) * (nu / (nu - 2))) - 1)).toBeLessThan(0.05);
    }
  });

  it('gives whole numbers over the whole range', () => {
    const random = seededRandom(5);
    const seen = new Set(Array.from({ length: 200 }, () => random.whole(6)));
    expect([...seen].sort()).toEqual([0, 1, 2, 3, 4, 5]);
  });
});

describe('Cholesky factor', () => {
  it('multiplies back, keeps a zero variance, refuses a negative one', () => {
    const L = lowerCholesky([
      [4, 2, 0],
      [2, 5, 0],
      [0, 0, 0],
    ]);
    expect(L).toEqual([[2], [1, 2], [0, 0, 0]]);
    expect(() =>
      lowerCholesky([
        [1, 2],
        [2, 1],
      ]),
    ).toThrow(OutOfRange);
  });
});
