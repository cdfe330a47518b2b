/** Comparison with a limit: three outcomes, mirrored, and never "shown" without a full uncertainty. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compareWithLimit } from '../../../analysis/results/index.ts';

const ask = (value: number | null, u95: number | null, margin = 0, side: 'upper' | 'lower' = 'upper') =>
  compareWithLimit({ what: 'coolant', value, u95, limit: 385, unit: 'K', margin, side }).outcome;

describe('a value against an upper limit', () => {
  it('is shown only when value and uncertainty stay below limit less margin', () => {
    expect(ask(380, 5)).toBe('shown');
    expect(ask(380, 5.01)).toBe('not shown');
    expect(ask(370, 5, 11)).toBe('not shown');
  });

  it('is exceeded only when even the low end is above', () => {
    expect(ask(390, 4.9)).toBe('exceeded');
    expect(ask(390, 5)).toBe('not shown');
  });

  it('says when the best estimate itself is beyond', () => {
    expect(compareWithLimit({ what: 'x', value: 386, u95: 5, limit: 385, unit: 'K' }).words).toMatch(
      /best estimate itself/,
    );
  });

  it('is not shown without a value or with a part of the uncertainty unknown', () => {
    expect(ask(null, 1)).toBe('not shown');
    expect(ask(300, null)).toBe('not shown');
    expect(ask(Number.NaN, 1)).toBe('not shown');
  });

  it('is mirrored for a lower limit', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -20, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 10, noNaN: true }),
        (d, u95) => {
          const upper = compareWithLimit({ what: 'x', value: d, u95, limit: 0, unit: 'K', side: 'upper' }).outcome;
          const lower = compareWithLimit({ what: 'x', value: -d, u95, limit: 0, unit: 'K', side: 'lower' }).outcome;
          expect(lower).toBe(upper);
        },
      ),
    );
  });
});
