/** Values at other times: straight between neighbours, nothing across a gap. */
import { describe, expect, it } from 'vitest';
import { type Series, valuesAt } from '../../../analysis/logs/index.ts';

const series: Series = {
  quantity: 'pressure-altitude',
  file: 'x.csv',
  column: 'PALT',
  t: Float64Array.of(0, 1, 2, 10, 11),
  v: Float64Array.of(0, 10, Number.NaN, 100, 110),
  holdSeconds: 2.5,
  flags: [],
};

describe('values at other times', () => {
  it('are the samples themselves where times agree', () => {
    expect([...valuesAt(series, [0, 1, 10, 11])]).toEqual([0, 10, 100, 110]);
  });

  it('lie on the line between neighbours', () => {
    expect([...valuesAt(series, [0.25, 10.5])]).toEqual([2.5, 105]);
  });

  it('are missing outside, in a gap, and beside a missing sample', () => {
    for (const value of valuesAt(series, [-1, 1.5, 5, 12])) expect(value).toBeNaN();
  });
});
