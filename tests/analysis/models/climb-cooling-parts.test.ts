/** Parts every cooling reduction shares: a hot day over height, coolant under its cap, what warms slowly, evidence of heat. */
import { describe, expect, it } from 'vitest';
import { pressureAt } from '../../../analysis/air/index.ts';
import { evidentRangeOf, plausibleRangeOf } from '../../../analysis/logs/index.ts';
import {
  boilingTemperature,
  boilingUnderCap,
  HOTTEST_SPOT,
  hotDayAir,
  hotDayLaw,
  slowPartAllowance,
} from '../../../analysis/models/index.ts';
import { toSi } from '../../../analysis/units/index.ts';

const C = (degrees: number) => toSi(degrees, 'degC');

describe('a hot day over height', () => {
  it('is the rule’s own, or a hotter one at one height that lapses as the rule does', () => {
    expect(hotDayLaw('14cfr23').at(2000)).toBe(hotDayAir('14cfr23', 2000));
    const stated = hotDayLaw('cs22', { air: C(45), height: 300 });
    expect(stated.at(300)).toBeCloseTo(C(45), 9);
    expect(stated.at(1300)).toBeCloseTo(C(45 - 6.5), 9); // CS 22.1047: 6.5 K per 1000 m
    expect(stated.words).toContain('45.0');
  });
});

describe('coolant under its cap', () => {
  const mix = { glycol: 'ethylene', fraction: 0.5 } as const;

  it('boils lower the higher it is, for a cap holds a gauge pressure', () => {
    const cap = toSi(1.1, 'bar');
    const [low, high] = [0, 3000].map((H) => boilingUnderCap(mix, cap, pressureAt(H)));
    expect(low?.boils).toBeCloseTo(boilingTemperature({ ...mix, pressure: pressureAt(0) + cap }), 9);
    expect((low?.boils ?? 0) - (high?.boils ?? 0)).toBeGreaterThan(3);
    expect((low?.boils ?? 0) - (low?.sensor ?? 0)).toBe(HOTTEST_SPOT);
    expect(low?.capU).toBeGreaterThan(0.5);
  });
});

describe('what warms slowly', () => {
  it('may add 3 K, or a tenth of the rise', () => {
    expect([slowPartAllowance(10), slowPartAllowance(60)]).toEqual([3, 6]);
  });
});

describe('evidence of heat', () => {
  const series = (quantity: string) => ({
    quantity,
    file: '',
    column: '',
    t: new Float64Array(),
    v: new Float64Array(),
    holdSeconds: 0,
    flags: [],
  });

  it('reaches beyond what healthy heads show, and for nothing else', () => {
    const head = series('cylinder-head-temperature#2');
    expect(evidentRangeOf(head)[1]).toBe(plausibleRangeOf(head)[1] + 100);
    const coolant = series('coolant-temperature');
    expect(evidentRangeOf(coolant)).toEqual(plausibleRangeOf(coolant));
  });
});
