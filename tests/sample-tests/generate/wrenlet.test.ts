import { describe, expect, it } from 'vitest';
import { fromSi, toSi } from '../../../analysis/units/index.ts';
import { wrenletAirspeed, wrenletClimb } from '../../../sample-tests/generate/wrenlet.ts';
import { wrenletGroundRun } from '../../../sample-tests/generate/wrenlet-ground-run.ts';

describe('Wrenlet’s log and pencilled figures', () => {
  it('the telephone’s ground velocity less the stated wind is the stated airspeed, leg by leg', () => {
    const { csv, truth } = wrenletAirspeed();
    const rows = csv
      .trimEnd()
      .split('\n')
      .slice(1)
      .map((line) => line.split(','));
    expect(truth.legs).toHaveLength(12);
    for (const leg of truth.legs) {
      const cells = rows.slice(leg.fromSeconds, leg.toSeconds + 1);
      const speeds = cells.map((row) => {
        const speed = toSi(Number(row[4]), 'km/h');
        const course = toSi(Number(row[5]), 'deg');
        return Math.hypot(speed * Math.cos(course) - leg.windNorth, speed * Math.sin(course) - leg.windEast);
      });
      const mean = speeds.reduce((sum, v) => sum + v, 0) / speeds.length;
      // Gusts and yaw enter in the second order, the telephone's 0.1 m/s averages out.
      expect(Math.abs(mean - leg.tas)).toBeLessThan(toSi(0.15, 'kt'));
    }
  });

  it('the timed climbs give the stated rates within their scatter, and bracket the best', () => {
    const { truth } = wrenletClimb();
    expect(truth.bestRateSpeed).toBeGreaterThan(truth.runs[0]?.cas ?? 0);
    expect(truth.bestRateSpeed).toBeLessThan(truth.runs.at(-1)?.cas ?? 0);
    expect(fromSi(truth.bestRate, 'ft/min')).toBeGreaterThan(300);
  });

  it('the head’s readings end near the stated equilibrium of the check speed', () => {
    const run = wrenletGroundRun();
    const text = JSON.stringify(run.points);
    const readings = [...text.matchAll(/"cylinder-head-temperature":\{"value":(\d+)/g)].map((match) =>
      Number(match[1]),
    );
    // 16 minutes are four time constants: 2 % of the rise is left, beside half a kelvin of reading.
    expect(Math.abs((readings[21] ?? 0) - (17 + 166))).toBeLessThan(5);
    expect(readings).toHaveLength(30);
  });
});
