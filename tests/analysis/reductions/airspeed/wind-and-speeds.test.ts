import { describe, expect, it } from 'vitest';
import {
  box,
  CALM_DAY,
  type CardLeg,
  cardPoints,
  columnIn,
  exactAirplane,
  flagsOf,
  KNOT,
  reduce,
  tableIn,
} from './card.ts';

const airplane = exactAirplane();
const round = [10, 100, 190, 280];
const speedsOf = (legs: CardLeg[], truth = CALM_DAY) => reduce({ points: cardPoints(legs, truth), airplane });
const windOf = (result: ReturnType<typeof reduce>) => result.quantities.filter((one) => one.name === 'wind-speed');

describe('a drifting wind', () => {
  const truth = { ...CALM_DAY, drift: { north: 3, east: -2 } };
  const five = [36, 42, 48, 54, 60].flatMap((ias, j) => box(ias, round, 10 * j));

  it('is solved for where four degrees of freedom are left, and then does no harm', () => {
    const result = speedsOf(five, truth);
    expect(flagsOf(result, 'wind-drift-not-separable')).toEqual([]);
    expect(windOf(result)[0]?.conditions.drift).toBe('linear in time');
    expect(result.quantities.find((one) => one.name === 'leg-scatter')?.value).toBeLessThan(0.02);
    const north = columnIn(result, 'wind', 'wind-north');
    const seconds = columnIn(result, 'wind', 'seconds');
    const rate = ((north[2] ?? 0) - (north[0] ?? 0)) / ((seconds[2] ?? 0) - (seconds[0] ?? 0));
    expect(rate * 3600).toBeCloseTo(3, 3);
  });

  it('is taken as steady, and said so, where fewer are left', () => {
    // 8 legs, one speed: 8 - 1 - 4 = 3 degrees of freedom with drift.
    const result = speedsOf([...box(45, round), ...box(45, round, 10)], truth);
    expect(flagsOf(result, 'wind-drift-not-separable')).toHaveLength(1);
    expect(tableIn(result, 'wind').rows).toHaveLength(1);
    const nine = speedsOf([...box(45, round), ...box(45, round, 10), ...box(45, [60], 20)], truth);
    expect(flagsOf(nine, 'wind-drift-not-separable')).toEqual([]);
  });
});

describe('a wind that changes with height', () => {
  // 2 m/s more to the north for every 300 m.
  const legs = (heights: readonly number[]) =>
    heights.flatMap((height, j) => box(45, round, 10 * j).map((leg) => ({ ...leg, height })));
  const withShear = (all: CardLeg[]) => {
    const { points } = cardPoints(all);
    return reduce({
      airplane,
      points: {
        kind: 'airspeed',
        points: points.map((point, i) => {
          const more = (((all[i]?.height ?? 0) - 1200) * 2) / 300;
          const track = (point['track-true'].value * Math.PI) / 180;
          const north = point['ground-speed'].value * Math.cos(track) + more;
          const east = point['ground-speed'].value * Math.sin(track);
          return {
            ...point,
            'ground-speed': { value: Math.hypot(north, east), unit: 'm/s' },
            'track-true': { value: Math.atan2(east, north), unit: 'rad' },
          };
        }),
      },
    });
  };

  it('is told apart when one speed was flown at heights 150 m apart with six degrees of freedom left', () => {
    const result = withShear(legs([1000, 1500, 1100, 1350]));
    expect(columnIn(result, 'position-error', 'correction')[0]).toBeCloseTo(1.2, 2);
    expect(result.quantities.find((one) => one.name === 'leg-scatter')?.value).toBeLessThan(0.05);
  });

  it('is remarked on when it cannot be', () => {
    const result = withShear(legs([1000, 1300]));
    expect(flagsOf(result, 'method-note').some((message) => message.includes('change of wind with height'))).toBe(true);
  });
});

describe('two outings', () => {
  it('over half an hour apart have winds of their own', () => {
    const morning = [40, 48].flatMap((ias, j) => box(ias, round, 10 * j));
    const evening = [40, 48].flatMap((ias, j) => box(ias, round, 120 + 10 * j));
    const early = cardPoints(morning).points;
    const late = cardPoints(evening, { ...CALM_DAY, wind: { north: -5, east: 7 } }).points;
    const result = reduce({ airplane, points: { kind: 'airspeed', points: [...early, ...late] } });
    const winds = windOf(result).map((one) => one.value ?? 0);
    expect(winds[0]).toBeCloseTo(Math.hypot(4, 6), 3);
    expect(winds[1]).toBeCloseTo(Math.hypot(5, 7), 3);
    expect(columnIn(result, 'position-error', 'legs')).toEqual([8, 8]);
    expect(flagsOf(result, 'method-note').some((message) => message.includes('2 outings'))).toBe(true);
  });
});

describe('speeds', () => {
  it('are told apart by a gap of three knots, and one group is never wider than six', () => {
    const near = [44, 44 + 2 * KNOT, 44 + 7 * KNOT].flatMap((ias, j) => box(ias, round, 10 * j));
    expect(columnIn(speedsOf(near), 'position-error', 'legs')).toEqual([8, 4]);
    const chain = [0, 2, 4, 6, 8].flatMap((more, j) => box(44 + more * KNOT, round, 10 * j));
    expect(columnIn(speedsOf(chain), 'position-error', 'legs').length).toBeGreaterThan(1);
  });

  it('one leg at each of many speeds is answered by the curve', () => {
    const legs = Array.from(
      { length: 12 },
      (_, i): CardLeg => ({ ias: 36 + 2.2 * i, heading: 100 * i, minutes: 2 * i }),
    );
    const result = speedsOf(legs);
    expect(result.status).toBe('reduced');
    columnIn(result, 'position-error', 'correction').forEach((value, j) => {
      const ias = columnIn(result, 'position-error', 'indicated-airspeed')[j] ?? 0;
      expect(Math.abs(value - CALM_DAY.correction(ias))).toBeLessThan(0.05); // a straight law is not quite a curve of lift
    });
  });

  it('where only ground speeds were written, are told apart by their label', () => {
    const points = cardPoints([...box(45, round), ...box(52, round, 10)]).points.map((point, i) => ({
      'ground-speed': point['ground-speed'],
      'track-true': point['track-true'],
      label: i < 4 ? 'cruise' : 'fast',
    }));
    const result = reduce({ points: { kind: 'airspeed', points } });
    const tas = result.quantities.filter((one) => one.name === 'true-airspeed');
    expect(tas.map((one) => one.conditions.label)).toEqual(['cruise', 'fast']);
    expect((tas[1]?.value ?? 0) / (tas[0]?.value ?? 1)).toBeCloseTo(52 / 45, 1);
    expect(result.tables.some((one) => one.name === 'position-error')).toBe(false);
  });
});
