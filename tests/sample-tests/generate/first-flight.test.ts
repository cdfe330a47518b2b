import { describe, expect, it } from 'vitest';
import { fromSi, toSi } from '../../../analysis/units/index.ts';
import { firstFlight } from '../../../sample-tests/generate/first-flight.ts';

describe('first flight of the samples', () => {
  const { states, truth } = firstFlight();

  it('leaves the ground once and comes back to the runway, gear down all the way, limits kept', () => {
    const up = states.filter((s) => s.height > truth.fieldHeight + 15);
    expect(up.length).toBeGreaterThan(5 * 300);
    expect(states.every((s) => s.shape.gearDown)).toBe(true);
    const last = states.at(-1);
    expect(Math.abs((last?.height ?? 0) - truth.fieldHeight)).toBeLessThan(2);
    expect(Math.max(...states.map((s) => fromSi(s.cas, 'kt')))).toBeLessThan(110);
    expect(fromSi(truth.coolantPeak, 'degC')).toBeLessThan(105);
  });

  it('the ground roll is the distance run from brake release to the speed of lift-off', () => {
    const run = states.filter((s) => s.t >= truth.brakeReleaseSeconds && s.t < truth.liftOffSeconds);
    const [from, to] = [run[0], run.at(-1)];
    const north = ((to?.latitude ?? 0) - (from?.latitude ?? 0)) * 6_371_000;
    const east = ((to?.longitude ?? 0) - (from?.longitude ?? 0)) * 6_371_000 * Math.cos(from?.latitude ?? 0);
    // One sample at lift-off speed: 7 m.
    expect(Math.abs(Math.hypot(north, east) - truth.groundRoll)).toBeLessThan(8);
    const direction = (Math.atan2(east, north) + 2 * Math.PI) % (2 * Math.PI);
    expect(Math.abs(direction - truth.runway)).toBeLessThan(toSi(4, 'deg'));
  });
});
