import { describe, expect, it } from 'vitest';
import { coverageFactor, studentTCdf, studentTQuantile } from '../../../analysis/numbers/index.ts';
import { OutOfRange } from '../../../analysis/remarks/index.ts';

describe('Student t with real degrees of freedom', () => {
  it('agrees with a direct integration of the density, whole and broken degrees of freedom alike', () => {
    for (const nu of [0.7, 1, 2.5, 3, 16.7, 50]) {
      for (const t of [0.3, 1, 2.2, 6]) {
        const area = 0.5 + simpson((x) => (1 + (x * x) / nu) ** (-(nu + 1) / 2), t) / fullArea(nu);
        // Simpson with 2000 steps is good to 1e-9 here
        expect(Math.abs(studentTCdf(t, nu) - area)).toBeLessThan(1e-7);
      }
    }
  });

  it('has closed forms at 1 and 2 degrees of freedom', () => {
    for (const p of [0.6, 0.9, 0.975, 0.9995]) {
      const cauchy = Math.tan(Math.PI * (p - 0.5));
      const two = (2 * p - 1) * Math.sqrt(2 / (1 - (2 * p - 1) ** 2));
      expect(Math.abs(studentTQuantile(p, 1) / cauchy - 1)).toBeLessThan(1e-10);
      expect(Math.abs(studentTQuantile(p, 2) / two - 1)).toBeLessThan(1e-10);
    }
  });

  it('inverts itself and is odd', () => {
    for (const nu of [0.5, 3, 7.3, 200, 1e6, Number.POSITIVE_INFINITY]) {
      for (const p of [0.001, 0.05, 0.31, 0.5, 0.975, 0.9999]) {
        expect(Math.abs(studentTCdf(studentTQuantile(p, nu), nu) - p)).toBeLessThan(1e-9);
        expect(studentTQuantile(1 - p, nu)).toBeCloseTo(-studentTQuantile(p, nu), 9);
      }
    }
  });

  it('falls towards the normal factor as degrees of freedom grow, without a step where it changes method', () => {
    let before = Number.POSITIVE_INFINITY;
    for (const nu of [1, 2, 5, 20, 100, 1e4, 99_999, 100_001, 1e9, Number.POSITIVE_INFINITY]) {
      const k = coverageFactor(nu);
      expect(k).toBeLessThanOrEqual(before);
      before = k;
    }
    expect(Math.abs(before - 1.959963984540054)).toBeLessThan(1e-12);
  });

  it('refuses what is no probability or no degree of freedom', () => {
    expect(() => studentTQuantile(1, 5)).toThrow(OutOfRange);
    expect(() => studentTQuantile(0.9, 0)).toThrow(OutOfRange);
    expect(() => studentTCdf(1, Number.NaN)).toThrow(OutOfRange);
  });
});

function simpson(f: (x: number) => number, to: number, steps = 2000): number {
  const h = to / steps;
  let sum = f(0) + f(to);
  for (let i = 1; i < steps; i += 1) sum += (i % 2 === 1 ? 4 : 2) * f(i * h);
  return (sum * h) / 3;
}

// Integral of the density's kernel over the whole line by x = sqrt(nu) tan(a): it becomes cos^(nu-1).
function fullArea(nu: number): number {
  const steps = 200_000;
  const h = Math.PI / steps;
  let sum = 0;
  for (let i = 0; i < steps; i += 1) sum += Math.cos(-Math.PI / 2 + (i + 0.5) * h) ** (nu - 1);
  // the midpoint rule is poor at the open ends only for nu < 1; those get the exact beta function below
  return nu < 1 ? (Math.sqrt(nu * Math.PI) * gamma(nu / 2)) / gamma((nu + 1) / 2) : sum * h * Math.sqrt(nu);
}

// Gamma by its integral, substitution x = u^4: independent of the approximation under test.
function gamma(z: number): number {
  const steps = 400_000;
  const top = 4;
  const h = top / steps;
  let sum = 0;
  for (let i = 0; i < steps; i += 1) {
    const u = (i + 0.5) * h;
    sum += 4 * u ** (4 * z - 1) * Math.exp(-(u ** 4));
  }
  return sum * h;
}
