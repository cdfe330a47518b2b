import { describe, expect, it } from 'vitest';
import type { Series } from '../../../analysis/logs/index.ts';
import { filledWithNearest, gridOver, heldOnGrid, movingMean, onGrid } from '../../../analysis/segments/index.ts';

const seriesAt = (t: number[], v: number[]): Series => ({
  quantity: 'coolant-temperature',
  file: 'a.csv',
  column: 'coolant',
  t: Float64Array.from(t),
  v: Float64Array.from(v),
  holdSeconds: 2.5,
  flags: [],
});

describe('grid', () => {
  it('takes the spacing of the channel, a second at the finest, and coarser for days of recording', () => {
    const every = (dt: number, n: number) => Float64Array.from({ length: n }, (_, i) => 7 + i * dt);
    expect(gridOver(every(1, 100))).toEqual({ start: 7, dt: 1, n: 100 });
    expect(gridOver(every(0.2, 101))).toEqual({ start: 7, dt: 1, n: 21 });
    expect(gridOver(every(60, 16))).toEqual({ start: 7, dt: 60, n: 16 });
    expect(gridOver(every(1, 400_000)).n).toBeLessThanOrEqual(100_001);
    expect(gridOver(new Float64Array()).n).toBe(1);
  });

  it('averages the readings of a sample, leaves gaps as gaps, and takes only what it is told to', () => {
    const grid = { start: 0, dt: 1, n: 5 };
    const series = seriesAt([0, 0.2, 0.4, 2, 2.1, 4], [10, 11, 12, 20, 90, 40]);
    const all = onGrid(series, grid);
    expect(Array.from(all)).toEqual([11, Number.NaN, 55, Number.NaN, 40]);
    expect(onGrid(series, grid, (value) => value < 80)[2]).toBe(20);
  });

  it('holds a slower channel only as long as it may be held', () => {
    const grid = { start: 0, dt: 1, n: 6 };
    const values = Float64Array.of(1, Number.NaN, Number.NaN, Number.NaN, 5, Number.NaN);
    expect(Array.from(heldOnGrid(values, grid, 2))).toEqual([1, 1, 1, Number.NaN, 5, 5]);
  });

  it('fills with the nearest reading, and says when there is none', () => {
    const values = Float64Array.of(Number.NaN, 1, Number.NaN, Number.NaN, Number.NaN, 9, Number.NaN);
    expect(Array.from(filledWithNearest(values) ?? [])).toEqual([1, 1, 1, 1, 9, 9, 9]);
    expect(filledWithNearest(Float64Array.of(Number.NaN))).toBeNull();
  });
});

describe('moving mean', () => {
  it('leaves a line a line, passes over gaps, and has no phase shift', () => {
    const line = Float64Array.from({ length: 50 }, (_, i) => 300 + 0.5 * i);
    movingMean(line, 11).forEach((value, i) => {
      expect(value).toBeCloseTo(300 + 0.5 * i, 9);
    });
    const peak = new Float64Array(21);
    peak[10] = 1;
    const smoothed = Array.from(movingMean(peak, 5));
    expect(smoothed.indexOf(Math.max(...smoothed))).toBe(8); // flat top of five, centred on 10
    expect(smoothed.lastIndexOf(Math.max(...smoothed))).toBe(12);
    const gappy = Float64Array.of(2, Number.NaN, 4, Number.NaN, Number.NaN, Number.NaN);
    expect(movingMean(gappy, 3)[1]).toBe(3);
    expect(movingMean(gappy, 3)[4]).toBeNaN();
  });
});
