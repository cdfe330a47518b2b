/** The demo flight, read from its two files as a person would hand them over, against what lies behind it. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { airplaneSchema } from '../../../../analysis/airplane/index.ts';
import { alignTables, readLogBytes, recordingOf } from '../../../../analysis/logs/index.ts';
import { cruiseCoolingFlight } from '../../../../sample-tests/generate/cruise-cooling-flight.ts';
import { plainAirplane } from '../../../blind/plain-airplane.ts';
import { cells, exponent, predict, reduce } from './card.ts';

const logs = join(import.meta.dirname, '..', '..', '..', '..', 'sample-tests', 'ouzel', 'logs');
const tables = ['cruise-cooling-gps.csv', 'cruise-cooling-monitor.csv'].map((file) => {
  const { table } = readLogBytes(readFileSync(join(logs, file)), { file, sha256: '0'.repeat(64) });
  if (!table) throw new Error(`${file} was not read`);
  return table;
});
const { shifts } = alignTables(tables);
const recording = recordingOf(tables, shifts);
const { truth, states } = cruiseCoolingFlight();
const result = reduce({ recording, airplane: airplaneSchema.parse(plainAirplane) });
const column = (name: string) => cells(result, 'steady-points', name);

describe('the cruise cooling flight of the demo', () => {
  it('finds all fifteen points, the first two regulated, and reads what the coolant was there', () => {
    const coolant = column('channel').flatMap((one, i) => (one === 'coolant-temperature' ? [i] : []));
    expect(coolant).toHaveLength(truth.points.length);
    const apart = coolant.map((row, k) => {
      const point = truth.points[k];
      const [from, to] = [Number(column('from-seconds')[row]), Number(column('to-seconds')[row])];
      // the pilot had the speed in the turn already, and left it in the next one
      expect(from).toBeGreaterThan((point?.fromSeconds ?? 0) - 60);
      expect(to).toBeLessThan((point?.toSeconds ?? 0) + 20);
      expect(column('regime')[row]).toBe(k < 2 ? 'regulated' : 'fully-open');
      const inside = states.filter((one) => one.t >= from && one.t <= to);
      const was = inside.reduce((sum, one) => sum + one.coolant / inside.length, 0);
      const read = Number(column('temperature')[row]) - truth.offsets.sensors.coolant;
      expect(Math.abs(read - was), String(column('label')[row])).toBeLessThan(0.3);
      return read - (point?.equilibrium ?? 0);
    });
    // the truth settles at the speed of the last minute, which wandered: the scatter that a fit has to expect
    expect(Math.sqrt(apart.reduce((sum, one) => sum + one ** 2 / apart.length, 0))).toBeLessThan(2);
  });

  it('static air is that of the flight within its U95, fuel flow within 3 %', () => {
    truth.points.forEach((point, k) => {
      const row = column('label').indexOf(`point ${k + 1}`);
      expect(Math.abs(Number(column('air')[row]) - point.airMean)).toBeLessThan(0.5);
      expect(Math.abs(Number(column('fuel-flow')[row]) / point.fuelFlow - 1)).toBeLessThan(0.03);
    });
  });

  it('exponents have the sign of physics, known to what fifteen points allow', () => {
    for (const [name, low, high] of [
      ['fuel-flow', 0.3, 1.2],
      ['dynamic-pressure', -0.6, -0.1],
      ['cowl-exit-position', -0.35, -0.05],
    ] as const) {
      const one = exponent(result, name);
      expect(one?.value).toBeGreaterThan(low);
      expect(one?.value).toBeLessThan(high);
      expect(one?.u95).toBeLessThan(0.5);
    }
  });

  it('predicts settings nobody flew: 19 in 20 inside, and none far outside', () => {
    let [inside, given] = [0, 0];
    for (const one of truth.between) {
      const answer = predict(result, {
        'fuel-flow': { value: one.fuelFlow, unit: 'm3/s' },
        'indicated-airspeed': { value: one.ias, unit: 'm/s' },
        'cowl-exit-position': { value: one.exit, unit: '1' },
        'outside-air-temperature': { value: one.airMean, unit: 'K' },
        'pressure-altitude': { value: 930, unit: 'm' },
      });
      const [coolant] = answer.quantities;
      if (coolant?.low === null || coolant?.high === null || !coolant) continue;
      const reads = one.equilibrium + truth.offsets.sensors.coolant;
      given += 1;
      if (coolant.low <= reads && reads <= coolant.high) inside += 1;
      expect(Math.abs(reads - (coolant.value ?? 0))).toBeLessThan(coolant.high - coolant.low);
    }
    expect(given).toBeGreaterThan(8);
    expect(inside / given).toBeGreaterThan(0.85);
  });

  it('the least margin stands with its parts, and is not called shown', () => {
    const margin = result.quantities.find((one) => one.name === 'hot-day-margin');
    expect(margin?.value).not.toBeNull();
    for (const part of ['noise', 'repeatability', 'calibration', 'fit'] as const)
      expect(margin?.parts[part]).toBeGreaterThan(0);
    expect(result.comparisons[0]?.outcome).toBe('not shown');
  });
});
