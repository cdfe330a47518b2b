/** Numbers as people read them: rounding follows the uncertainty. */
import { describe, expect, it } from 'vitest';
import { decimalsOf, show, toSi } from '../../../analysis/units/index.ts';

describe('JCGM 100, 7.2.6 (from memory): as many digits as the uncertainty supports', () => {
  it.each([
    [0.12, 2],
    [0.35, 1],
    [2.4, 1],
    [3.4, 0],
    [14, 0],
    [120, 0],
    [0.0051, 3],
  ])('a half-width of %s takes %s decimals', (half, decimals) => {
    expect(decimalsOf(half)).toBe(decimals);
  });

  it('shows value, half-width and unit together', () => {
    expect(show(toSi(98.24, 'degC'), 'degC', { u95: 1.23 }).text).toBe('98.2 ± 1.2 °C');
    expect(show(toSi(104, 'degC'), 'degC').text).toBe('104 °C');
    expect(show(toSi(-3.2, 'kt'), 'kt', { decimals: 1 }).text).toBe('−3.2 kt');
    expect(show(toSi(245, 'deg'), 'deg').text).toBe('245°');
  });

  it('converts the uncertainty of a temperature as a difference', () => {
    expect(show(toSi(100, 'degC'), 'degF', { u95: 5 }).text).toBe('212 ± 9 °F');
  });

  it('writes no minus before zero, and a dash for what is no number', () => {
    expect(show(-0.001, 'm', { decimals: 1 }).number).toBe('0.0');
    expect(show(Number.NaN, 'm').number).toBe('—');
  });
});
