import { describe, expect, it } from 'vitest';
import { findTurns } from '../../../analysis/segments/index.ts';
import { recordingFrom } from './flown.ts';

const deg = Math.PI / 180;

/** Straight, then one turn at 5 degrees a second to the given side, then straight. */
const turning = (side: number, degrees: number) => {
  const lasts = degrees / 5;
  return recordingFrom({
    rateHz: 5,
    seconds: lasts + 80,
    channels: {
      'indicated-airspeed': () => 42,
      'pressure-altitude': () => 1800,
      'roll-angle': (t) => (t > 40 && t < 40 + lasts ? side * 21 * deg : 0),
      'track-true': (t) => (((side * Math.min(Math.max(t - 40, 0), lasts) * 5 * deg) % 6.2832) + 6.2832) % 6.2832,
    },
  });
};

describe('turns', () => {
  it.each([-1, 1])('are found to either side (%d), from roll-in to roll-out', (side) => {
    const found = findTurns(turning(side, 400));
    expect(found.segments).toHaveLength(1);
    expect(found.segments[0]?.fromSeconds).toBeGreaterThan(42);
    expect(Math.abs((found.segments[0]?.toSeconds ?? 0) - 120)).toBeLessThan(3);
    expect(found.segments[0]?.role).toBe('turn');
  });

  it('that do not nearly close are left out with the angle turned', () => {
    const found = findTurns(turning(1, 240));
    expect(found.segments).toHaveLength(0);
    expect(found.excluded[0]?.reason).toMatch(/turned only \d+° of 300°/);
  });
});
