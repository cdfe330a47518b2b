import { describe, expect, it } from 'vitest';
import { fromSi, toSi } from '../../../analysis/units/index.ts';
import { airspeedFlight } from '../../../sample-tests/generate/airspeed-flight.ts';

const flight = airspeedFlight();
const knots = (si: number) => fromSi(si, 'kt');

describe('airspeed calibration flight of the samples', () => {
  it('the wind triangle closes at every step', () => {
    const worst = Math.max(
      ...flight.states.map((s) => Math.abs(Math.hypot(s.groundNorth - s.windNorth, s.groundEast - s.windEast) - s.tas)),
    );
    expect(worst).toBeLessThan(1e-9);
  });

  it('tells the story: six speeds, four legs each, 17 kt from 245, 4 kt low at 65 and 3 kt high at 150', () => {
    const { legs, wind, positionError } = flight.truth;
    expect(legs).toHaveLength(24);
    const speeds = new Map<number, number>();
    for (const leg of legs) {
      const nearest = [65, 80, 97, 114, 132, 150].reduce((a, b) =>
        Math.abs(b - knots(leg.ias)) < Math.abs(a - knots(leg.ias)) ? b : a,
      );
      speeds.set(nearest, (speeds.get(nearest) ?? 0) + 1);
      expect(leg.toSeconds - leg.fromSeconds).toBeGreaterThan(60);
    }
    expect([...speeds.values()]).toEqual([4, 4, 4, 4, 4, 4]);
    // The wind wanders by 0.4 kt a component over minutes: the mean of one flight is not the nominal one.
    expect(Math.abs(knots(wind.speed) - 17)).toBeLessThan(1);
    expect(Math.abs(fromSi(wind.direction, 'deg') - 245)).toBeLessThan(4);
    expect(knots(positionError[0]?.correction ?? 0)).toBeCloseTo(4, 3);
    expect(knots(positionError[5]?.correction ?? 0)).toBeCloseTo(-3, 3);
  });

  it('legs are flown as a person flies: bank under 5 degrees, height within 30 m, indicated speed within 3 kt', () => {
    for (const leg of flight.truth.legs) {
      const rows = flight.states.filter((s) => s.t >= leg.fromSeconds && s.t <= leg.toSeconds);
      const height = rows.map((s) => s.height);
      const cas = rows.map((s) => knots(s.cas));
      expect(Math.max(...rows.map((s) => Math.abs(s.bank)))).toBeLessThan(toSi(5, 'deg'));
      expect(Math.max(...height) - Math.min(...height)).toBeLessThan(30);
      expect(Math.max(...cas) - Math.min(...cas)).toBeLessThan(6);
    }
  });

  it('the truth is what the logger shows, within its own noise: ground speed less wind gives the stated airspeed', () => {
    const rows = flight.logs.logger().split('\n').slice(2);
    for (const leg of flight.truth.legs) {
      const [from, to] = [Math.round(leg.fromSeconds * 5), Math.round(leg.toSeconds * 5)];
      let [indicated, speed, count] = [0, 0, 0];
      for (let i = from; i <= to; i += 1) {
        const cells = (rows[i] ?? '').split(',');
        const ground = toSi(Number(cells[7]), 'kt');
        const track = toSi(Number(cells[8]), 'deg');
        const north = ground * Math.cos(track) - leg.windNorth;
        const east = ground * Math.sin(track) - leg.windEast;
        speed += Math.hypot(north, east);
        indicated += toSi(Number(cells[1]), 'kt');
        count += 1;
      }
      // Mean wind of the leg for the wind of each sample costs second-order terms only; lag and wander a little more.
      expect(Math.abs(speed / count - leg.tas)).toBeLessThan(toSi(0.15, 'kt'));
      expect(Math.abs(indicated / count - flight.truth.offsets.airData.airspeed - leg.ias)).toBeLessThan(
        toSi(0.1, 'kt'),
      );
    }
  });

  it('the monitor shows the same encoder altitude as the logger once its clock is put right', () => {
    const { monitorShiftSeconds } = flight.truth.clock;
    const logger = flight.logs.logger().split('\n').slice(2);
    const monitor = flight.logs.monitor().split('\n').slice(4, -1);
    const misses = monitor.map((row, i) => {
      const at = logger[Math.round((i + monitorShiftSeconds) * 5)] ?? '';
      return Math.abs(Number(row.split(',').at(-1)) - Number(at.split(',')[2]));
    });
    // The encoder rounds to 10 ft and the logger adds its noise and 1 m of its own error.
    expect(Math.max(...misses)).toBeLessThan(16);
  });
});
