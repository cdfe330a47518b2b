import { describe, expect, it } from 'vitest';
import { incompleteBeta, logGamma, normalCdf, normalQuantile } from '../../../analysis/numbers/index.ts';
import { OutOfRange } from '../../../analysis/remarks/index.ts';

describe('log gamma', () => {
  it('gives factorials and the half-integer values', () => {
    let factorial = 1;
    for (let n = 1; n <= 20; n += 1) {
      expect(Math.abs(logGamma(n) - Math.log(factorial))).toBeLessThan(1e-12 * (1 + n));
      factorial *= n;
    }
    let half = Math.sqrt(Math.PI); // Gamma(1/2)
    for (let k = 0; k < 20; k += 1) {
      expect(Math.abs(logGamma(k + 0.5) - Math.log(half))).toBeLessThan(1e-11);
      half *= k + 0.5;
    }
  });
});

describe('incomplete beta', () => {
  it('equals the binomial sum for whole shapes', () => {
    for (const [a, b] of [
      [1, 1],
      [2, 5],
      [7, 3],
    ] as const) {
      for (const x of [0.05, 0.4, 0.9]) {
        let sum = 0;
        for (let j = a; j <= a + b - 1; j += 1) sum += choose(a + b - 1, j) * x ** j * (1 - x) ** (a + b - 1 - j);
        expect(Math.abs(incompleteBeta(x, a, b) - sum)).toBeLessThan(1e-13);
      }
    }
  });

  it('is symmetric and bounded, and refuses nonsense', () => {
    expect(incompleteBeta(0.3, 2.5, 4)).toBeCloseTo(1 - incompleteBeta(0.7, 4, 2.5), 13);
    expect(incompleteBeta(0, 2, 2)).toBe(0);
    expect(incompleteBeta(1, 2, 2)).toBe(1);
    expect(() => incompleteBeta(1.1, 2, 2)).toThrow(OutOfRange);
    expect(() => incompleteBeta(0.1, 0, 2)).toThrow(OutOfRange);
  });
});

describe('normal distribution', () => {
  it('has the printed values', () => {
    // table of the normal distribution, from memory
    expect(Math.abs(normalCdf(1) - 0.8413447460685429)).toBeLessThan(1e-14);
    expect(Math.abs(normalCdf(-2) - 0.0227501319481792)).toBeLessThan(1e-14);
    expect(Math.abs(normalCdf(-6) / 9.865876450376946e-10 - 1)).toBeLessThan(1e-10);
    expect(Math.abs(normalQuantile(0.95) - 1.6448536269514722)).toBeLessThan(1e-12);
  });

  it('has no seam where series and fraction meet, and inverts itself far out', () => {
    expect(Math.abs(normalCdf(3 - 1e-9) - normalCdf(3 + 1e-9))).toBeLessThan(1e-10);
    for (const p of [1e-12, 1e-4, 0.3, 0.7, 0.99999]) {
      expect(Math.abs(normalCdf(normalQuantile(p)) / p - 1)).toBeLessThan(1e-9);
    }
    expect(() => normalQuantile(0)).toThrow(OutOfRange);
    expect(normalCdf(Number.NaN)).toBeNaN();
  });
});

const choose = (n: number, k: number) => Math.round(Math.exp(logFactorial(n) - logFactorial(k) - logFactorial(n - k)));

function logFactorial(n: number): number {
  let sum = 0;
  for (let i = 2; i <= n; i += 1) sum += Math.log(i);
  return sum;
}
