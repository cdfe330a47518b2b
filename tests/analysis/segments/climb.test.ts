import { describe, expect, it } from 'vitest';
import { findClimbs } from '../../../analysis/segments/index.ts';
import { recordingFrom, steps } from './flown.ts';

const climbing = (rate: (t: number) => number, speed: (t: number) => number = () => 43, seconds = 300) => {
  let height = 900;
  return recordingFrom({
    rateHz: 1,
    seconds,
    channels: {
      'indicated-airspeed': speed,
      'pressure-altitude': (t) => {
        height += rate(t);
        return height;
      },
      'roll-angle': () => 0,
    },
  });
};

describe('climbs and descents', () => {
  it('are told apart by sign and end near level-off', () => {
    const found = findClimbs(
      climbing(
        steps([
          [0, 0],
          [60, 3],
          [160, 0],
          [200, -2.5],
          [280, 0],
        ]),
      ),
    );
    expect(found.segments.map((one) => one.role)).toEqual(['climb', 'descent']);
    expect(Math.abs((found.segments[0]?.toSeconds ?? 0) - 160)).toBeLessThan(10);
  });

  it('whatever their unsteadiness: a rate that swings between 1 and 5 m/s is one run', () => {
    const found = findClimbs(climbing((t) => 3 + 2 * Math.sin((2 * Math.PI * t) / 45)));
    expect(found.segments).toHaveLength(1);
    expect((found.segments[0]?.toSeconds ?? 0) - (found.segments[0]?.fromSeconds ?? 0)).toBeGreaterThan(260);
  });

  it('with the speed changing 10 kt are cut where the speed leaves its band', () => {
    const found = findClimbs(
      climbing(
        () => 3,
        steps(
          [
            [0, 43],
            [140, 48.2],
          ],
          30,
        ),
      ),
    );
    expect(found.segments.length).toBe(2);
    for (const one of found.segments) expect(one.toSeconds <= 150 || one.fromSeconds >= 155).toBe(true);
  });

  it('of little height are left out with the height', () => {
    const found = findClimbs(
      climbing(
        steps([
          [0, 1],
          [55, 0],
        ]),
      ),
    );
    expect(found.segments).toHaveLength(0);
    expect(found.excluded[0]?.reason).toMatch(/climb of \d+ m/);
  });
});
