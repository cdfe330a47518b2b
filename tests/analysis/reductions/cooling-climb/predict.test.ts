import { describe, expect, it } from 'vitest';
import { coolingClimb } from '../../../../analysis/reductions/cooling-climb/index.ts';
import { PLAIN_CLIMB, simulateClimb } from '../../../blind/cooling-climb-flight.ts';
import { rowsNamed } from '../cooling-ground/table-rows.ts';
import { climbed, ouzelFor } from './climbed.ts';

const { result } = climbed();
const predict = (given: unknown, from = result) => coolingClimb.predict?.(from, given);
const air = (value: number) => ({ 'outside-air-temperature': { value, unit: 'K' } });
const [row] = rowsNamed(result, 'peaks');
const model = result.model?.peaks;
const [first] = Array.isArray(model) ? model : [];

describe('the next climb', () => {
  it('in the same air reads the same, give or take the scatter of two climbs', () => {
    const same = predict({ ...air(first.air), 'pressure-altitude': { value: first.height, unit: 'm' } });
    const [peak] = same?.quantities ?? [];
    expect(peak?.name).toBe('peak-coolant-temperature');
    expect(peak?.value).toBeCloseTo(Number(row?.peak), 6);
    const half = ((peak?.high ?? 0) - (peak?.low ?? 0)) / 2;
    // two draws of 1.5 K with a weak prior, and an air probe
    expect(half).toBeGreaterThan(1.5 * Math.SQRT2 * 1.96);
    expect(half).toBeLessThan(8);
  });

  it('follows the air one to one, taken to the height of the peak by the standard lapse', () => {
    const at = { 'pressure-altitude': { value: first.height - 1000, unit: 'm' } };
    const hotter = predict({ ...air(first.air + 6.5 + 10), ...at })?.quantities[0];
    expect(hotter?.value).toBeCloseTo(Number(row?.peak) + 10, 6);
  });

  it('is refused away from what was flown: air, height, airspeed, and where nothing peaked', () => {
    const here = { 'pressure-altitude': { value: first.height, unit: 'm' } };
    expect(predict({ ...air(first.air + 40), ...here })).toMatchObject({ status: 'refused' });
    const high = { ...air(first.air), 'start-pressure-altitude': { value: first.fromHeight + 900, unit: 'm' } };
    expect(predict(high)?.reason).toContain('thinner air');
    expect(predict({ ...air(first.air), 'indicated-airspeed': { value: 70, unit: 'kt' } })?.reason).toContain(
      'airspeed',
    );
    const unpeaked = climbed({ to: 1200, tau: 420, before: 0.5, thermostat: null }).result;
    expect(predict(air(290), unpeaked)).toMatchObject({ status: 'refused' });
  });

  it('holds the reading of another flight in other air in 19 of 20', () => {
    // one airplane: its laws are those of the seed, its day and its scatter another; the same seed keeps the laws
    const airplane = ouzelFor();
    let [held, of] = [0, 0];
    for (let seed = 0; seed < 12; seed += 1) {
      const one = simulateClimb({ ...PLAIN_CLIMB, colder: [15, 15], runScatter: 0, gust: 0 }, seed);
      const reduced = coolingClimb.reduce({ recording: one.recording, airplane });
      const next = simulateClimb({ ...PLAIN_CLIMB, colder: [8, 8], runScatter: 0, gust: 0 }, seed);
      const peaks = reduced.model?.peaks;
      if (!Array.isArray(peaks) || !peaks[0]) continue;
      const peak = predict(
        { ...air(next.truth.airAtPeak), 'pressure-altitude': { value: peaks[0].height, unit: 'm' } },
        reduced,
      )?.quantities[0];
      const shown = rowsNamed(coolingClimb.reduce({ recording: next.recording, airplane }), 'peaks')[0];
      of += 1;
      if (Number(shown?.highest) >= (peak?.low ?? 0) && Number(shown?.highest) <= (peak?.high ?? 0)) held += 1;
    }
    expect(of).toBeGreaterThan(8);
    expect(of - held).toBeLessThanOrEqual(1);
  });
});
