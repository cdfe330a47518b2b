import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airResponse, remainingRise, temperatureAfter, timeToReach } from '../../../analysis/models/index.ts';
import { OutOfRange } from '../../../analysis/remarks/index.ts';

describe('response to the air', () => {
  it('agrees with a fine Runge-Kutta integration over a wandering air temperature', () => {
    const air = Float64Array.from({ length: 300 }, (_, i) => 290 + 3 * Math.sin(i / 17) + 0.01 * i);
    for (const tau of [40, 300, 3000]) {
      const out = airResponse(air, 2, tau);
      let a = 0;
      let worst = 0;
      for (let i = 1; i < air.length; i += 1) {
        const u = (share: number) => (1 - share) * (air[i - 1] ?? 0) + share * (air[i] ?? 0);
        for (let k = 0; k < 20; k += 1) {
          const h = 2 / 20;
          const rate = (value: number, part: number) => (u((k + part) / 20) - value) / tau;
          const k1 = rate(a, 0);
          const k2 = rate(a + (h / 2) * k1, 0.5);
          const k3 = rate(a + (h / 2) * k2, 0.5);
          const k4 = rate(a + h * k3, 1);
          a += (h / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
        }
        worst = Math.max(worst, Math.abs(a - (out[i] ?? 0)));
      }
      expect(worst).toBeLessThan(1e-6);
    }
  });

  it('lags a steady ramp by rate times tau in the end', () => {
    const air = Float64Array.from({ length: 4000 }, (_, i) => 0.01 * i);
    expect(39.99 - (airResponse(air, 1, 100)[3999] ?? 0)).toBeCloseTo(0.01 * 100, 6);
  });

  it('refuses a time constant that is none', () => {
    expect(() => airResponse([1, 2], 1, 0)).toThrow(OutOfRange);
    expect(() => airResponse([1, 2], 0, 10)).toThrow(OutOfRange);
  });
});

describe('time to a limit', () => {
  it('takes the temperature exactly to the limit, for any case that gets there', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 280, max: 360, noNaN: true }),
        fc.double({ min: 1, max: 60, noNaN: true }),
        fc.double({ min: 0.5, max: 40, noNaN: true }),
        fc.double({ min: 40, max: 2000, noNaN: true }),
        (start, toLimit, beyond, tau) => {
          const limit = start + toLimit;
          const t = timeToReach(start, limit + beyond, tau, limit);
          expect(Math.abs(temperatureAfter(start, limit + beyond, tau, t) - limit)).toBeLessThan(1e-9);
        },
      ),
    );
  });

  it('is never where it settles at or under the limit, and at once where it starts over it', () => {
    expect(timeToReach(350, 385, 300, 385)).toBe(Number.POSITIVE_INFINITY);
    expect(timeToReach(386, 400, 300, 385)).toBe(0);
    expect(() => timeToReach(350, 400, 0, 385)).toThrow(OutOfRange);
  });

  it('a rate that looks steady leaves rate times tau: 1.1 K/min is 5.6 K at 300 s, 28 K at 1500 s', () => {
    // 14 CFR 25.1045 calls 2 F/min stabilised; the figures are those of the first-order balance
    const rate = 2 / 1.8 / 60;
    expect(Math.abs(remainingRise(rate, 300) - 5.6)).toBeLessThan(0.05);
    expect(Math.abs(remainingRise(rate, 1500) - 28)).toBeLessThan(0.3);
    expect(() => remainingRise(rate, -1)).toThrow(OutOfRange);
    expect(() => temperatureAfter(1, 2, 0, 3)).toThrow(OutOfRange);
  });
});
