import { describe, expect, it } from 'vitest';
import {
  blockBootstrap,
  largerHalfWidth,
  medianDeviation,
  monteCarlo,
  quantileOfSorted,
  seededRandom,
  standApart,
} from '../../../analysis/numbers/index.ts';
import { OutOfRange } from '../../../analysis/remarks/index.ts';

const meanOf = (x: Float64Array) => x.reduce((sum, one) => sum + one, 0) / x.length;

describe('moving-block bootstrap', () => {
  it('finds the error of a correlated mean, which single draws miss', () => {
    const random = seededRandom('blocks');
    const r = 0.8;
    let e = 0;
    const series = Float64Array.from({ length: 4000 }, () => {
      e = r * e + random.normal();
      return e;
    });
    // AR(1): variance of the mean is that of white noise of the same innovations over (1 - r)^2.
    const truth = 1 / (1 - r) / Math.sqrt(series.length);
    const half = (blockLength: number) => {
      const means = blockBootstrap(series, blockLength, meanOf, seededRandom('draw'), 800);
      return (quantileOfSorted(means, 0.975) - quantileOfSorted(means, 0.025)) / (2 * 1.96);
    };
    expect(Math.abs(half(100) / truth - 1)).toBeLessThan(0.25);
    expect(half(1)).toBeLessThan(0.5 * truth);
  });

  it('refuses fewer than twenty blocks', () => {
    expect(() => blockBootstrap(new Float64Array(100), 6, meanOf, seededRandom(1))).toThrow(OutOfRange);
  });
});

describe('Monte Carlo', () => {
  it('is the same for the same seed, counts what failed, and passes infinity through', () => {
    const run = () => {
      const random = seededRandom(9);
      return monteCarlo(
        () => [random.normal()],
        ([z = 0]) => [z > 1 ? Number.POSITIVE_INFINITY : z, z < 0 ? Number.NaN : z],
      );
    };
    const [first, second] = run();
    expect(run()[0]?.median).toBe(first?.median);
    expect(first?.high).toBe(Number.POSITIVE_INFINITY);
    expect(second?.failed).toBeCloseTo(0.5, 1);
    expect(second?.low).toBeGreaterThanOrEqual(0);
  });

  it('quotes the larger half-width', () => {
    const random = seededRandom(10);
    const [drawn] = monteCarlo(
      () => [random.normal()],
      ([z = 0]) => [Math.exp(z)],
    );
    expect(drawn && largerHalfWidth(drawn, 1)).toBeCloseTo((drawn?.high ?? 0) - 1, 12);
  });
});

describe('median deviation', () => {
  it('is the standard deviation of normal values and ignores a wild one', () => {
    const random = seededRandom(12);
    const values = Array.from({ length: 20_000 }, () => 5 + 2 * random.normal());
    expect(Math.abs(medianDeviation([...values, 1e9]).deviation - 2)).toBeLessThan(0.06);
  });

  it('names what stands apart, but not what is merely a coarse step or missing', () => {
    expect(standApart([20, 20, 21, 20, -99, Number.NaN, 20], 5, 3)).toEqual([
      false,
      false,
      false,
      false,
      true,
      false,
      false,
    ]);
  });
});
