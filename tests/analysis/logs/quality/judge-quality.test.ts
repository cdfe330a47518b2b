import { describe, expect, test } from 'vitest';
import { judgeQuality } from '../../../../analysis/logs/quality/judge-quality.ts';
import type { LogChannel, LogTable } from '../../../../analysis/logs/table.ts';
import { toSi } from '../../../../analysis/units/index.ts';

const ROWS = 1200;

/** A channel of made-up readings, in the unit of the file. */
function channel(quantity: string, unit: string, written: (row: number) => number): LogChannel {
  return {
    column: quantity,
    index: 0,
    name: quantity,
    quantity,
    unit,
    confidence: 1,
    why: '',
    values: Float64Array.from({ length: ROWS }, (_, i) => toSi(written(i), unit)),
    valid: 1,
    flags: [],
  };
}

function table(...channels: LogChannel[]): LogTable {
  const seconds = Float64Array.from({ length: ROWS }, (_, i) => i);
  const time = {
    seconds,
    startUtcMs: null,
    start: null,
    zone: '',
    durationSeconds: ROWS - 1,
    sampleRateHz: 1,
    segments: [],
  };
  return { file: 'a.csv', sha256: '', rows: ROWS, time, channels, flags: [] };
}

const rpm = () => channel('engine-speed', 'rpm', (i) => 2400 + Math.round(20 * Math.sin(i * 1.3)));
const kinds = (c: LogChannel) => c.flags.map((one) => one.kind);

describe('the quality of channels', () => {
  test('good, coarse readings get no flag', () => {
    const coolant = channel('coolant-temperature', 'degC', (i) => Math.round(88 + 4 * Math.sin(i / 190)));
    const oat = channel('outside-air-temperature', 'degC', () => 12);
    judgeQuality(table(rpm(), coolant, oat));
    expect(kinds(coolant)).toEqual([]);
    expect(kinds(oat)).toEqual([]);
  });

  test('missing cells are merged into stretches, and summed up when there are many', () => {
    const one = channel('oil-temperature', 'degC', (i) => (i >= 100 && i < 110 ? Number.NaN : 90 + Math.sin(i)));
    const many = channel('oil-temperature', 'degC', (i) => (i % 10 === 0 ? Number.NaN : 90 + Math.sin(i)));
    judgeQuality(table(one, many));
    expect(one.flags).toMatchObject([{ kind: 'missing-values', fromSeconds: 100, toSeconds: 109 }]);
    expect(one.valid).toBeCloseTo(1 - 10 / ROWS, 12);
    expect(many.flags).toHaveLength(21);
    expect(many.flags.at(-1)?.message).toContain('100 more');
  });

  test('a spike is flagged and taken out, a step that stays is neither', () => {
    const spiky = channel('coolant-temperature', 'degC', (i) => (i === 300 ? 140 : 88 + Math.sin(i)));
    const stepping = channel('coolant-temperature', 'degC', (i) => (i >= 300 ? 60 : 88) + Math.sin(i));
    judgeQuality(table(rpm(), spiky, stepping));
    expect(spiky.flags).toMatchObject([{ kind: 'spike', fromSeconds: 300, toSeconds: 300 }]);
    expect(spiky.values[300]).toBeNaN();
    expect(kinds(stepping)).toEqual([]);
  });

  test('the marker of an open sensor is taken out; the same number is left where it is honest', () => {
    const open = channel('cylinder-head-temperature#2', 'degF', (i) => (i > 500 && i < 560 ? -999 : 350 + Math.sin(i)));
    const climbing = channel('pressure-altitude', 'ft', (i) => 9000 + Math.min(999, i));
    judgeQuality(table(rpm(), open, climbing));
    expect(open.flags).toMatchObject([{ kind: 'disconnected', fromSeconds: 501, toSeconds: 559 }]);
    expect(open.values[530]).toBeNaN();
    expect(climbing.flags).toEqual([]);
  });

  test('a zero that is jumped to and back is no reading; a zero that is reached is one', () => {
    const open = channel('cylinder-head-temperature#2', 'degF', (i) => (i > 500 && i < 560 ? 0 : 350 + Math.sin(i)));
    const winter = channel('outside-air-temperature', 'degC', (i) => Math.round(8 * Math.sin(i / 100)));
    const parked = channel('indicated-airspeed', 'kt', (i) => Math.max(0, Math.min(90 + Math.sin(i), i - 300)));
    judgeQuality(table(rpm(), open, winter, parked));
    expect(open.flags).toMatchObject([{ kind: 'disconnected', fromSeconds: 501, toSeconds: 559 }]);
    expect(open.values[530]).toBeNaN();
    expect([...kinds(winter), ...kinds(parked)]).toEqual([]);
  });

  test('of two temperatures alone the one that stops is stuck', () => {
    const stopped = channel('oil-temperature', 'degC', (i) => (i >= 400 && i < 600 ? 91.3 : 90 + 2 * Math.sin(i)));
    const going = channel('coolant-temperature', 'degC', (i) => 88 + Math.sin(i));
    judgeQuality(table(stopped, going));
    expect(stopped.flags).toMatchObject([{ kind: 'stuck', fromSeconds: 400, toSeconds: 599 }]);
    expect(going.flags).toEqual([]);
  });

  test('an open sensor far off is taken out; an overheating cylinder is not', () => {
    const open = channel('oil-temperature', 'degC', (i) => (i >= 800 ? -180 : 90) + Math.sin(i));
    const hot = channel(
      'cylinder-head-temperature#1',
      'degC',
      (i) => 180 + Math.sin(i) + Math.max(0, 160 - Math.abs(i - 600)) * 1.1,
    );
    judgeQuality(table(rpm(), open, hot));
    expect(open.flags).toMatchObject([{ kind: 'disconnected', fromSeconds: 800, toSeconds: 1199 }]);
    expect(hot.flags).toEqual([]);
    expect(hot.valid).toBe(1);
  });

  test('oil pressure of a stopped engine is not stuck', () => {
    const oil = channel('oil-pressure', 'bar', (i) => (i > 500 ? 0 : 4 + 0.1 * Math.round(Math.sin(i) * 3)));
    judgeQuality(table(rpm(), oil));
    expect(oil.flags).toEqual([]);
  });

  test('a channel that stops while the engine goes on is stuck; its values stay', () => {
    const oil = channel('oil-temperature', 'degC', (i) => (i >= 400 && i < 600 ? 91.3 : 90 + 2 * Math.sin(i)));
    judgeQuality(table(rpm(), oil));
    expect(oil.flags).toMatchObject([{ kind: 'stuck', fromSeconds: 400, toSeconds: 599 }]);
    expect(oil.valid).toBe(1);
  });

  test('a repeated fix is stuck and taken out; a parked airplane is not', () => {
    const at = (i: number) => (i >= 600 && i < 608 ? 600 : i);
    const speed = channel('ground-speed', 'kt', (i) => (i < 100 ? 0 : 90 + Math.sin(at(i))));
    const latitude = channel('latitude', 'deg', (i) => 45 + 4e-4 * Math.max(0, at(i) - 100));
    const longitude = channel('longitude', 'deg', (i) => -37 + 1e-5 * Math.max(0, at(i) - 100));
    judgeQuality(table(speed, latitude, longitude));
    for (const one of [speed, latitude, longitude]) {
      expect(one.flags).toMatchObject([{ kind: 'stuck', fromSeconds: 601, toSeconds: 607 }]);
      expect(one.values[603]).toBeNaN();
      expect(one.values[600]).not.toBeNaN();
    }
  });

  test('a trace that is cut off at the top is saturated', () => {
    const exhaust = channel('exhaust-gas-temperature', 'degC', (i) => Math.min(700, 690 + 60 * Math.sin(i / 20)));
    judgeQuality(table(rpm(), exhaust));
    expect(new Set(kinds(exhaust))).toEqual(new Set(['saturated']));
  });

  test('values that do not fit the unit say so, and stay', () => {
    const coolant = channel('coolant-temperature', 'K', (i) => 88 + Math.sin(i));
    judgeQuality(table(rpm(), coolant));
    expect(kinds(coolant)).toEqual(['implausible-unit']);
    expect(coolant.flags[0]?.message).toContain('coolant-temperature in K');
    expect(coolant.valid).toBe(1);
  });
});
