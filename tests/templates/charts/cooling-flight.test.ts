import { describe, expect, it } from 'vitest';
import { chartsOf } from '../../../templates/charts/index.ts';
import { USUAL_UNITS } from '../../../templates/words/unit-shown.ts';
import { cardPoints, exactAirplane, excess, reduce, SETTINGS } from '../../analysis/reductions/cooling-flight/card.ts';

const charts = chartsOf(reduce({ points: cardPoints(SETTINGS), airplane: exactAirplane() }), USUAL_UNITS);

describe('charts of flight cooling', () => {
  it('points brought to the hot day over fuel flow, with bars, beside caution and limit', () => {
    const [hot] = charts;
    expect(hot?.x).toEqual({ label: 'Fuel flow', unit: 'L/h' });
    const [points] = hot?.datasets ?? [];
    expect(hot?.title).toBe('Coolant brought to the hot day');
    expect(points?.label).toBe('Coolant temperature');
    const wanted = SETTINGS.map((one) => excess(one) + 340 / 9).sort((a, b) => a - b);
    expect(points?.x).toEqual([...(points?.x ?? [])].sort((a, b) => a - b));
    [...(points?.y ?? [])]
      .sort((a, b) => (a ?? 0) - (b ?? 0))
      .forEach((value, i) => {
        expect(value).toBeCloseTo(wanted[i] ?? Number.NaN, 5);
        expect(points?.half?.[i]).toBeGreaterThan(1);
      });
    // the ends of the bars stay in the picture
    expect(Math.min(...(hot?.left.includes ?? []))).toBeLessThan(Math.min(...wanted) - 1);
    expect(hot?.limits.map((one) => [one.label, one.weight])).toEqual([
      ['caution 105 °C', 'caution'],
      ['limit 112 °C', 'limit'],
    ]);
    expect(hot?.summary).toContain('Coolant temperature: up to');
  });

  it('what the fit leaves of each point, none of a law that holds', () => {
    const [, left] = charts;
    expect(left?.datasets[0]?.y.every((one) => Math.abs(one ?? 1) < 1e-6)).toBe(true);
    expect(left?.left).toMatchObject({ label: 'Measured less fitted', unit: '°C' });
  });

  it('nothing to draw: no chart', () => {
    const few = chartsOf(reduce({ points: cardPoints(SETTINGS.slice(0, 2)), airplane: exactAirplane() }), USUAL_UNITS);
    expect(few.map((one) => one.title)).toEqual(['Coolant brought to the hot day']);
    expect(chartsOf(reduce({}), USUAL_UNITS)).toEqual([]);
  });
});
