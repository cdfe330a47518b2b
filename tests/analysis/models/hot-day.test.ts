import { describe, expect, it } from 'vitest';
import {
  correctToHotDay,
  HOT_DAY_FACTOR,
  hotDayAir,
  isStabilised,
  limitingAir,
} from '../../../analysis/models/index.ts';
import { OutOfRange } from '../../../analysis/remarks/index.ts';
import { fromSi, toSi } from '../../../analysis/units/index.ts';

describe('hot day', () => {
  it('differs between the two rules by what their figures say: 0.22 K at sea level', () => {
    expect(hotDayAir('cs22', 0) - hotDayAir('14cfr23', 0)).toBeCloseTo(38 - (100 - 32) / 1.8, 9);
  });

  it('has no seam at the floor and refuses altitudes nobody flies', () => {
    const floorFrom = toSi(169.7 / 3.6, 'ft') * 1000;
    expect(hotDayAir('14cfr23', floorFrom + 1)).toBeCloseTo(toSi(-69.7, 'degF'), 9);
    expect(hotDayAir('14cfr23', floorFrom - 1) - hotDayAir('14cfr23', floorFrom)).toBeCloseTo(0.00656, 4);
    expect(() => hotDayAir('cs22', 30_000)).toThrow(OutOfRange);
    expect(() => hotDayAir('cs22', Number.NaN)).toThrow(OutOfRange);
  });

  it('adds the whole difference to liquids and heads, seven tenths to barrels, and a negative one literally', () => {
    expect(HOT_DAY_FACTOR).toEqual({ coolant: 1, oil: 1, 'cylinder-head': 1, 'cylinder-barrel': 0.7 });
    expect(correctToHotDay(370, 'cylinder-barrel', 290, 310)).toBeCloseTo(384, 9);
    expect(correctToHotDay(370, 'coolant', 312, 310)).toBeCloseTo(368, 9);
  });

  it('limiting air is the air in which the corrected temperature stands at the limit', () => {
    const hot = limitingAir(385, 370, 290);
    expect(correctToHotDay(370, 'coolant', 290, hot)).toBeCloseTo(385, 9);
  });

  it('stabilised is strictly below the rate, warming or cooling', () => {
    expect(isStabilised(toSi(-1.99, 'degF/min'))).toBe(true);
    expect(isStabilised(toSi(-2.01, 'degF/min'))).toBe(false);
    expect(fromSi(hotDayAir('14cfr23', 0), 'degF')).toBeCloseTo(100, 9);
  });
});
