import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { thin } from '../../../templates/charts/min-max.ts';

const series = (values: number[]) => ({
  t: Float64Array.from(values, (_, i) => i),
  v: Float64Array.from(values),
});

describe('thinning for a chart', () => {
  it('keeps the largest and smallest value of any series, whatever the width', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ noNaN: true, min: -1e6, max: 1e6 }), { minLength: 2, maxLength: 2000 }),
        fc.integer({ min: 1, max: 300 }),
        (values, columns) => {
          const { t, v } = series(values);
          const { y } = thin(t, v, { from: 0, to: values.length - 1 }, columns);
          const kept = y.filter((one) => one !== null);
          expect(Math.max(...kept)).toBe(Math.max(...values));
          expect(Math.min(...kept)).toBe(Math.min(...values));
          expect(y.length).toBeLessThanOrEqual(2 * (columns + 3));
        },
      ),
      { numRuns: 100 },
    );
  });

  it('keeps a spike of one sample among a million', () => {
    const values = new Float64Array(1_000_000).fill(90);
    values[654_321] = 140;
    const t = values.map((_, i) => i);
    const { x, y } = thin(t, values, { from: 0, to: 999_999 }, 1000);
    expect(y).toContain(140);
    expect(x[y.indexOf(140)]).toBe(654_321);
  });

  it('never draws across missing values', () => {
    const { t, v } = series([1, 2, Number.NaN, Number.NaN, 5, 6]);
    expect(thin(t, v, { from: 0, to: 5 }, 100).y).toEqual([1, 2, null, 5, 6]);
    expect(thin(t, v, { from: 0, to: 5 }, 1).y.filter((one) => one !== null)).toContain(6);
  });

  it('gives times in their order, with one sample beyond each end', () => {
    const { t, v } = series(Array.from({ length: 100 }, (_, i) => i));
    const { x } = thin(t, v, { from: 40.5, to: 60.5 }, 500);
    expect(x[0]).toBe(40);
    expect(x.at(-1)).toBe(61);
    expect([...x].sort((a, b) => a - b)).toEqual(x);
  });

  it('is empty for an empty series', () => {
    expect(thin(new Float64Array(0), new Float64Array(0), { from: 0, to: 1 }, 10)).toEqual({ x: [], y: [] });
  });
});
