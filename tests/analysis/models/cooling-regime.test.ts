import { describe, expect, it } from 'vitest';
import { governingOf, thermostatSpans } from '../../../analysis/models/index.ts';
import { toSi } from '../../../analysis/units/index.ts';
import { airplaneWith } from '../../blind/cooling-days.ts';

const C = (degrees: number) => toSi(degrees, 'degC');

describe('what governs', () => {
  it('comes from the airplane, or from what a person states instead', () => {
    const ouzel = airplaneWith('ouzel');
    expect(governingOf(ouzel, undefined, 'coolant')).toMatchObject({ start: C(80), open: C(92), startAssumed: false });
    expect(governingOf(ouzel, 'none', 'coolant')).toBe('none');
    expect(governingOf(ouzel, { start: { si: C(70) }, open: { si: C(85) } }, 'coolant')).toMatchObject({ open: C(85) });
    expect(governingOf(ouzel, undefined, 'cylinder-head')).toBe('none');
    expect(governingOf(ouzel, undefined, 'oil')).toBeNull();
    expect(governingOf(undefined, undefined, 'coolant')).toBeNull();
    const half = airplaneWith('ouzel', (json) => {
      delete json.cooling?.thermostatStart;
    });
    expect(governingOf(half, undefined, 'coolant')).toMatchObject({ start: C(80), startAssumed: true });
  });
});

describe('spans of a thermostat', () => {
  const thermostat = { start: C(80), open: C(92), startAssumed: false };
  const heating = Float64Array.from({ length: 600 }, (_, i) => C(60 + i / 10));

  it('warm, are regulated until 2 K over fully open for half a minute, then open', () => {
    const spans = thermostatSpans(heating, 1, thermostat);
    expect(spans.map(({ regime, from, to }) => [regime, from, to])).toEqual([
      ['warming', 0, 199],
      ['regulated', 200, 370],
      ['fully-open', 371, 599],
    ]);
  });

  it('begin open where the record before it already was, and not where nobody knows', () => {
    const hot = new Float64Array(100).fill(C(100));
    expect(thermostatSpans(hot, 1, thermostat, C(100))).toEqual([{ from: 0, to: 99, regime: 'fully-open' }]);
    expect(thermostatSpans(hot, 1, thermostat)[0]).toEqual({ from: 0, to: 29, regime: 'regulated' });
  });

  it('keep what governs over missing readings', () => {
    const holed = heating.slice();
    holed.fill(Number.NaN, 400, 420);
    expect(thermostatSpans(holed, 1, thermostat).map(({ regime }) => regime)).toEqual([
      'warming',
      'regulated',
      'fully-open',
    ]);
  });
});
