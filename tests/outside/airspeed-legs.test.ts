/** Gates on published examples of satellite legs and speed courses; each case is named by its source. */
import { describe, expect, it } from 'vitest';
import { toSi } from '../../analysis/units/index.ts';
import {
  given,
  LEG_SPECIAL,
  measureCourse,
  measureLegs,
  numbered,
  quantityIn,
  reduceCourse,
  reduceLegs,
  triangle,
} from './measure-legs.ts';
import { deviations, readTruth, type TruthCase } from './truth-set.ts';

const SETS = [
  { name: 'gps-airspeed', measure: measureLegs, least: 6 },
  { name: 'speed-course', measure: measureCourse, least: 9 },
];

describe.each(SETS)('$name', ({ name, measure, least }) => {
  const { cases } = readTruth(name);

  it('holds all the cases carried over', () => {
    expect(cases.length).toBe(least);
  });

  it.each(cases.map((one): [string, TruthCase] => [`${one.source}: ${one.id}`, one]))('%s', (_, one) => {
    const all = deviations(one, measure(one), LEG_SPECIAL);
    expect(all.length).toBeGreaterThan(0);
    for (const d of all) {
      expect(Math.abs(d.got - d.expected), `${d.key}: printed ${d.expected}, got ${d.got}`).toBeLessThanOrEqual(
        d.tolerance,
      );
    }
  });
});

const caseOf = (set: string, id: string): TruthCase => {
  const found = readTruth(set).cases.find((one) => one.id === id);
  if (!found) throw new Error(`no case ${id}`);
  return found;
};
const knots = (value: number | undefined) => (value ?? Number.NaN) / toSi(1, 'kt');

describe('what the published shortcuts get wrong, the reduction gets right', () => {
  it('four cardinal headings: the average of ground speeds is 1 kt high, the solution is 100 kt', () => {
    const one = caseOf('gps-airspeed', 'cardinal-average-trap');
    expect(knots(measureLegs(one).average_ground_speed)).toBeGreaterThan(100.9);
    expect(knots(measureLegs(one).tas)).toBeCloseTo(100, 6);
  });

  it('three tracks 120 degrees apart: the root mean square is 0.24 % high', () => {
    const got = measureLegs(caseOf('gps-airspeed', 'rms-3track-120'));
    expect(Math.abs(knots(got.tas) - 100)).toBeLessThan(0.05); // ground speeds are printed to 0.1 kt
    expect(knots(got.rms_ground_speed)).toBeGreaterThan(100.2);
  });

  it('four legs: least squares is another estimator than the mean of three-leg answers', () => {
    const one = caseOf('gps-airspeed', 'ntps-4leg');
    const tracks = numbered(one, 'track_true', 'deg');
    const result = reduceLegs(
      numbered(one, 'ground_speed', 'kt').map((speed, i) => ({ speed, track: tracks[i] ?? 0 })),
    );
    // 183.7219 kt, 5.006958 kt from 179.4566 degrees: an independent script's least-squares circle of the same legs.
    expect(Math.abs(knots(quantityIn(result, 'true-airspeed')) - 183.7219)).toBeLessThan(5e-4);
    expect(Math.abs(knots(quantityIn(result, 'wind-speed')) - 5.006958)).toBeLessThan(5e-5);
  });

  it.each(['two-run-crosswind', 'two-run-30deg'])(
    '%s: on the heading, the speed along the course gives 100 kt',
    (id) => {
      const one = caseOf('speed-course', id);
      const wind = { speed: given(one, 'wind_speed_kt'), from: given(one, 'wind_dir_from_deg') };
      const runs = numbered(one, 'heading', 'deg').map((heading) => {
        const over = triangle(given(one, 'tas_kt'), wind, heading);
        return { heading, speed: over.speed * Math.cos(toSi(over.track - heading, 'deg')) };
      });
      const result = reduceCourse(runs, 'kt');
      expect(knots(quantityIn(result, 'true-airspeed'))).toBeCloseTo(100, 6);
      expect(quantityIn(result, 'wind-speed')).toBeUndefined(); // across the course nothing is known
    },
  );

  it('two legs by ground speed and track alone are refused: reciprocal or not, the wind across them is free', () => {
    const one = caseOf('speed-course', 'two-run-heading-error');
    const wind = { speed: given(one, 'wind_speed_kt'), from: given(one, 'wind_dir_from_deg') };
    const legs = numbered(one, 'heading', 'deg').map((heading) => triangle(given(one, 'tas_kt'), wind, heading));
    const result = reduceLegs(legs);
    expect(result).toMatchObject({ status: 'refused', code: 'too-few-points' });
  });

  it('out and back by the clock: 80 mph is the mean of the speeds, not distance over total time', () => {
    const one = caseOf('speed-course', 'out-and-back-times');
    const [tas, wind] = [given(one, 'tas_mph'), given(one, 'tailwind_out_mph')];
    const result = reduceCourse(
      [
        { speed: tas + wind, heading: 70 },
        { speed: tas - wind, heading: 250 },
      ],
      'mph',
    );
    expect((quantityIn(result, 'true-airspeed') ?? 0) / toSi(1, 'mph')).toBeCloseTo(80, 6);
  });
});
