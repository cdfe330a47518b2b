/** Numerals of cards: grouping, careful rounding, round figures. */
import { describe, expect, it } from 'vitest';
import { plainNumber, roughNumber, roundedTo } from '../../../analysis/catalogue/numerals.ts';

describe('numerals', () => {
  it('group from five digits on and keep a true minus', () => {
    expect([4000, 10000, 12500, -1.5, 0.7, 1234567].map(plainNumber)).toEqual([
      '4000',
      '10,000',
      '12,500',
      '−1.5',
      '0.7',
      '1,234,567',
    ]);
  });

  it('round to the careful side without losing exact values', () => {
    expect(roundedTo(109.32, 0, 'upper')).toBe('109');
    expect(roundedTo(109.0000000001, 0, 'lower')).toBe('109');
    expect(roundedTo(108.9999999999, 0, 'upper')).toBe('109');
    expect(roundedTo(66.87, 0, 'lower')).toBe('67');
    expect(roundedTo(3.04, 1, 'upper')).toBe('3.0');
    expect(roundedTo(-1.25, 1, 'upper')).toBe('−1.3');
    expect(roundedTo(2.5, 0, 'nearest')).toBe('3');
  });

  it('make round figures of two digits, one below 1, heights upwards', () => {
    expect(roughNumber(152.4, true)).toBe('160');
    expect(roughNumber(1219.2)).toBe('1200');
    expect(roughNumber(0.5556)).toBe('0.6');
    expect(roughNumber(3.81)).toBe('3.8');
    expect(roughNumber(0)).toBe('0');
  });
});
