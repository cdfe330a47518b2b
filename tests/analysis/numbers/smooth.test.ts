import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { slopes, smooth } from '../../../analysis/numbers/index.ts';
import { OutOfRange } from '../../../analysis/remarks/index.ts';

const t = Array.from({ length: 200 }, (_, i) => i * 0.5);

describe('smoothing without phase shift', () => {
  it('leaves a straight line alone, ends included', () => {
    const v = t.map((x) => 3 + 0.2 * x);
    smooth(t, v, 10, 2).forEach((value, i) => {
      expect(value).toBeCloseTo(v[i] ?? 0, 9);
    });
  });

  it('keeps the top of a hump where it is, and lowers it', () => {
    const v = t.map((x) => Math.exp(-(((x - 50) / 8) ** 2)));
    const smoothed = smooth(t, v, 6, 2);
    const top = smoothed.indexOf(Math.max(...smoothed));
    expect(t[top]).toBe(50);
    expect(smoothed[top]).toBeLessThan(1);
  });

  it('commutes with turning time round', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -100, max: 100, noNaN: true }), { minLength: 5, maxLength: 60 }),
        fc.integer({ min: 1, max: 20 }),
        (v, width) => {
          const time = v.map((_, i) => i);
          const forward = smooth(time, v, width, 1.5);
          const backward = smooth(time, [...v].reverse(), width, 1.5).reverse();
          for (let i = 0; i < v.length; i += 1)
            expect(Math.abs((forward[i] ?? 0) - (backward[i] ?? 1))).toBeLessThan(1e-8);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('does not reach over a gap, and leaves the missing missing', () => {
    const time = [0, 1, 2, 3, 20, 21, 22, 23];
    const v = [1, 1, 1, 1, 9, 9, Number.NaN, 9];
    expect([...smooth(time, v, 8, 1.5)]).toEqual([1, 1, 1, 1, 9, 9, Number.NaN, 9]);
    expect(() => smooth(time, v, 0, 1)).toThrow(OutOfRange);
  });
});

describe('local slope', () => {
  it('is the slope, over uneven times too', () => {
    const uneven = t.map((x, i) => x + 0.2 * Math.sin(i));
    const got = slopes(
      uneven,
      uneven.map((x) => 7 - 0.3 * x),
      8,
      2,
    );
    expect(got[0]).toBeNaN(); // one sample alone has no slope
    for (const value of got.slice(3, -3)) expect(value).toBeCloseTo(-0.3, 9);
    expect(() => slopes(t, t, -1, 1)).toThrow(OutOfRange);
  });
});
