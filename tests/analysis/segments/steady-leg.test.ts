import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../analysis/numbers/index.ts';
import { findSteadyLegs } from '../../../analysis/segments/index.ts';
import { type Flown, recordingFrom, steps } from './flown.ts';

const deg = Math.PI / 180;

/** Two legs of 90 s with a right turn of 30 s at 20 degrees between them. */
const box = (more: Partial<Flown> = {}): Flown => ({
  rateHz: 5,
  seconds: 210,
  channels: {
    'indicated-airspeed': () => 45,
    'pressure-altitude': () => 1200,
    'roll-angle': steps(
      [
        [0, 0],
        [90, 20 * deg],
        [118, 0],
      ],
      2,
    ),
  },
  ...more,
});
const spans = (flown: Flown) =>
  findSteadyLegs(recordingFrom(flown)).segments.map(({ fromSeconds, toSeconds }) => [fromSeconds, toSeconds] as const);

describe('steady legs', () => {
  it('end where the bank begins and start ten seconds after it ends', () => {
    const [first, second] = spans(box());
    expect(first?.[0]).toBeCloseTo(10, 0);
    expect(Math.abs((first?.[1] ?? 0) - 90)).toBeLessThan(2);
    expect(Math.abs((second?.[0] ?? 0) - 130)).toBeLessThan(2);
    expect(second?.[1]).toBeCloseTo(210, 0);
  });

  it('are found alike from heading or track when no bank was logged, and say so', () => {
    const turning = steps(
      [
        [0, 0],
        [90, 90 * deg],
      ],
      30,
    );
    for (const direction of ['heading-magnetic', 'track-true']) {
      const { channels } = box();
      const flown = box({
        channels: {
          'indicated-airspeed': channels['indicated-airspeed'] ?? (() => 0),
          'pressure-altitude': () => 1200,
          [direction]: turning,
        },
      });
      const found = findSteadyLegs(recordingFrom(flown));
      expect(found.segments).toHaveLength(2);
      expect(found.criteria.join(' ')).toContain(direction === 'track-true' ? 'rate of track' : 'rate of heading');
    }
  });

  it('keep two speeds in one straight flight apart', () => {
    const flown = box({
      seconds: 260,
      channels: {
        'indicated-airspeed': steps(
          [
            [0, 40],
            [110, 46],
          ],
          30,
        ),
        'pressure-altitude': () => 1200,
        'roll-angle': () => 0,
      },
    });
    const found = spans(flown);
    expect(found).toHaveLength(2);
    expect(found[0]?.[1]).toBeLessThan(122);
    expect(found[1]?.[0]).toBeGreaterThan(128);
  });

  it('do not cross a gap in the rows, and report what was too short beside it', () => {
    const found = findSteadyLegs(recordingFrom(box({ seconds: 90, missing: [[30, 40]] })));
    expect(found.segments.map((one) => Math.round(one.fromSeconds))).toEqual([50]);
    expect(found.excluded).toHaveLength(1);
    expect(found.excluded[0]?.reason).toContain('settling');
  });

  it('bear noise, wander and a step of one knot', () => {
    const random = seededRandom('legs');
    const kt = 0.5144;
    const { channels } = box();
    const flown = box({
      channels: {
        ...channels,
        'indicated-airspeed': (t) =>
          Math.round((88 + 0.7 * Math.sin((2 * Math.PI * t) / 25) + 0.7 * random.normal()) / 1) * kt,
        'pressure-altitude': (t) => 1200 + 5 * Math.sin((2 * Math.PI * t) / 40) + 1.2 * random.normal(),
      },
    });
    expect(spans(flown)).toHaveLength(2);
  });

  it('climbing flight is no leg, nor a log without airspeed', () => {
    const climbing = box({ channels: { ...box().channels, 'pressure-altitude': (t) => 1200 + 3 * t } });
    expect(spans(climbing)).toHaveLength(0);
    const without = box({ channels: { 'pressure-altitude': () => 1200 } });
    expect(findSteadyLegs(recordingFrom(without)).criteria).toEqual(['no airspeed was logged']);
  });

  it('does not look at ground speed: what is measured is no criterion', () => {
    const plain = spans(box());
    const gusty = box({ channels: { ...box().channels, 'ground-speed': (t) => 40 + 15 * Math.sin(t) } });
    expect(spans(gusty)).toEqual(plain);
  });
});
