import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { describe, expect, it } from 'vitest';
import { inverseOfProduct, leastSquares, seededRandom } from '../../../analysis/numbers/index.ts';
import { OutOfRange } from '../../../analysis/remarks/index.ts';

const decay = (b: readonly number[], x: number) => (b[0] ?? 0) * Math.exp(-x / (b[1] ?? 1)) + (b[2] ?? 0);

function decayData(seed: number, noise: number) {
  const random = seededRandom(seed);
  const x = Array.from({ length: 40 }, (_, i) => i * 5);
  return { x, y: x.map((one) => decay([60, 40, 20], one) + noise * random.normal()) };
}

describe('least squares', () => {
  it('agrees with a general library on a decay (ml-levenberg-marquardt 5.1.0)', () => {
    const { x, y } = decayData(3, 0.5);
    const ours = leastSquares({
      start: [40, 20, 10],
      residuals: (b) => x.map((one, i) => decay(b, one) - (y[i] ?? 0)),
    });
    const theirs = levenbergMarquardt({ x, y }, (b) => (one: number) => decay(b, one), {
      initialValues: [40, 20, 10],
      maxIterations: 500,
      errorTolerance: 0,
      damping: 1e-3,
      gradientDifference: 1e-6,
      centralDifference: true,
    });
    ours.parameters.forEach((value, j) => {
      expect(Math.abs(value / (theirs.parameterValues[j] ?? 0) - 1)).toBeLessThan(1e-5); // where their search stops
    });
    expect(ours.rss).toBeLessThanOrEqual(theirs.parameterError * (1 + 1e-9));
  });

  it('gives a covariance that the scatter of repeated fits confirms', () => {
    const noise = 0.5;
    const fits = Array.from({ length: 300 }, (_, seed) => {
      const { x, y } = decayData(seed + 100, noise);
      return leastSquares({ start: [50, 30, 15], residuals: (b) => x.map((one, i) => decay(b, one) - (y[i] ?? 0)) });
    });
    for (const j of [0, 1, 2]) {
      const values = fits.map((fit) => fit.parameters[j] ?? 0);
      const mean = values.reduce((sum, one) => sum + one / values.length, 0);
      const spread = Math.sqrt(values.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (values.length - 1));
      const stated = noise * Math.sqrt(fits[0]?.inverse[j]?.[j] ?? 0);
      expect(Math.abs(spread / stated - 1)).toBeLessThan(0.15); // 300 repeats know a spread to 4 %
    }
  });

  it('takes derivatives when they are given, with the same answer', () => {
    const { x, y } = decayData(4, 0.5);
    const residuals = (b: readonly number[]) => x.map((one, i) => decay(b, one) - (y[i] ?? 0));
    const jacobian = (b: readonly number[]) =>
      x.map((one) => {
        const e = Math.exp(-one / (b[1] ?? 1));
        return [e, ((b[0] ?? 0) * e * one) / (b[1] ?? 1) ** 2, 1];
      });
    const [byHand, byDifference] = [{ jacobian }, {}].map((more) =>
      leastSquares({ start: [40, 20, 10], residuals, ...more }),
    );
    byHand?.parameters.forEach((value, j) => {
      expect(Math.abs(value - (byDifference?.parameters[j] ?? 0))).toBeLessThan(1e-7);
    });
  });

  it('holds a bound, says so, and leaves the held parameter out of the covariance', () => {
    const { x, y } = decayData(5, 0.1);
    const fit = leastSquares({
      start: [40, 20, 25],
      lower: [0, 1, 22],
      upper: [200, 500, 100],
      residuals: (b) => x.map((one, i) => decay(b, one) - (y[i] ?? 0)),
    });
    expect(fit.parameters[2]).toBe(22);
    expect(fit.atBound).toEqual([false, false, true]);
    expect(fit.inverse[2]).toEqual([0, 0, 0]);
    expect(fit.nu).toBe(x.length - 2);
  });

  it('solves an exact problem with as many points as unknowns', () => {
    const fit = leastSquares({ start: [1, 1], residuals: ([a = 0, b = 0]) => [a * a - 9, a * b - 6] });
    expect(fit.parameters[0]).toBeCloseTo(3, 10);
    expect(fit.parameters[1]).toBeCloseTo(2, 10);
    expect(fit.nu).toBe(0);
  });

  it('refuses unknowns that the data do not separate, too few points, and a start that is no number', () => {
    const x = [1, 2, 3, 4];
    const same = () =>
      leastSquares({ start: [1, 1], residuals: ([a = 0, b = 0]) => x.map((one) => (a + b) * one - 5) });
    expect(same).toThrow(OutOfRange);
    expect(() => leastSquares({ start: [1, 1], residuals: ([a = 0]) => [a] })).toThrow(OutOfRange);
    expect(() => leastSquares({ start: [1], residuals: () => [Number.NaN] })).toThrow(OutOfRange);
  });
});

describe('inverse of J J', () => {
  it('is the inverse, also with columns of very different size', () => {
    const J = [
      [1, 2e8],
      [3, 1e8],
      [2, 5e8],
    ];
    const inverse = inverseOfProduct(J);
    const product = [0, 1].map((j) =>
      [0, 1].map((k) => J.reduce((sum, row) => sum + (row[j] ?? 0) * (row[k] ?? 0), 0)),
    );
    const unit = [0, 1].map((j) =>
      [0, 1].map((k) => [0, 1].reduce((sum, m) => sum + (product[j]?.[m] ?? 0) * (inverse[m]?.[k] ?? 0), 0)),
    );
    expect(unit[0]?.[0]).toBeCloseTo(1, 9);
    expect(unit[1]?.[1]).toBeCloseTo(1, 9);
    expect(Math.abs(unit[0]?.[1] ?? 1) * 1e8).toBeLessThan(1);
  });
});
