import { describe, expect, it } from 'vitest';
import { coverageFactor, fitLine, robustLine, seededRandom, valueOnLine } from '../../../analysis/numbers/index.ts';
import { OutOfRange } from '../../../analysis/remarks/index.ts';

describe('straight line', () => {
  it('leaves out missing pairs and refuses too few or no spread', () => {
    const fit = fitLine([0, 1, 2, Number.NaN, 4], [1, 3, 5, 9, Number.NaN]);
    expect(fit.slope).toBeCloseTo(2, 12);
    expect(() => fitLine([0, 1], [1, 2])).toThrow(OutOfRange);
    expect(() => fitLine([1, 1, 1], [1, 2, 3])).toThrow(OutOfRange);
  });

  it('weighs points: the weighted mean of two groups at two places gives the slope', () => {
    const fit = fitLine([0, 0, 1, 1], [0, 3, 10, 10], { weights: [2, 1, 1, 1] });
    expect(fit.slope).toBeCloseTo(10 - 1, 12);
    expect(valueOnLine(fit, 0).value).toBeCloseTo(1, 12);
  });

  it('covers the slope under correlated noise where the plain error does not', () => {
    const x = Array.from({ length: 240 }, (_, i) => i);
    const truth = 0.02;
    let plain = 0;
    let widened = 0;
    const runs = 200;
    for (let seed = 0; seed < runs; seed += 1) {
      const random = seededRandom(`slope ${seed}`);
      const r = Math.exp(-1 / 8); // correlation time 8 s at 1 Hz
      let e = random.normal();
      const y = x.map((one) => {
        e = r * e + Math.sqrt(1 - r * r) * random.normal();
        return truth * one + e;
      });
      const one = fitLine(x, y);
      const other = fitLine(x, y, { correlated: { dt: 1, floor: 5 } });
      if (Math.abs(one.slope - truth) <= coverageFactor(one.nu) * one.uSlope) plain += 1;
      if (Math.abs(other.slope - truth) <= coverageFactor(other.nu) * other.uSlope) widened += 1;
    }
    expect(plain / runs).toBeLessThan(0.6);
    expect(widened / runs).toBeGreaterThan(0.9);
  });
});

describe('Theil-Sen line', () => {
  const x = Array.from({ length: 12 }, (_, i) => i + 1);
  const y = [2.1, 3.9, 6.2, 7.8, 30, 12.1, 13.9, 16.2, 17.8, 20.1, 21.9, 24.3];

  it('agrees with a general library, one wild point included (SciPy 1.17.1, theilslopes)', () => {
    const line = robustLine(x, y);
    expect(line.slope).toBeCloseTo(2.0, 12);
    expect(line.low).toBeCloseTo(1.95, 12);
    expect(line.high).toBeCloseTo(2.05, 12);
    expect(fitLine(x, y).slope).toBeLessThan(1.9); // what the wild point does to least squares
  });

  it('refuses too few points, too many, and one x', () => {
    expect(() => robustLine([1, 2], [1, 2])).toThrow(OutOfRange);
    expect(() => robustLine([1, 1, 1], [1, 2, 3])).toThrow(OutOfRange);
    const many = new Float64Array(3001);
    expect(() => robustLine(many, many)).toThrow(OutOfRange);
  });
});
