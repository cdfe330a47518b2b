import { describe, expect, test } from 'vitest';
import { alignTables } from '../../../../analysis/logs/align/align-tables.ts';
import type { LogChannel, LogTable } from '../../../../analysis/logs/table.ts';

/** Altitude of a made-up flight, m: climbs, levels and small waves, no part like another. */
const altitude = (s: number) =>
  500 + 300 * Math.sin(s / 170) + 90 * Math.sin(s / 41 + (s / 600) ** 2) + 20 * Math.sin(s / 13 + (s / 400) ** 2);

interface Made {
  file: string;
  quantity: string;
  from: number;
  hz: number;
  seconds: number;
  /** the reading at a true time, SI */
  reads: (s: number) => number;
  startUtcMs?: number | null;
}

function table({ file, quantity, from, hz, seconds, reads, startUtcMs = null }: Made): LogTable {
  const t = Float64Array.from({ length: seconds * hz }, (_, i) => i / hz);
  const values = t.map((s) => reads(from + s));
  const channel: LogChannel = {
    column: quantity,
    index: 1,
    name: quantity,
    quantity,
    unit: 'm',
    confidence: 1,
    why: '',
    values,
    valid: 1,
    flags: [],
  };
  const zone = startUtcMs === null ? 'unknown' : 'UTC';
  const time = { seconds: t, startUtcMs, start: null, zone, durationSeconds: seconds, sampleRateHz: hz, segments: [] };
  return { file, sha256: '', rows: t.length, time, channels: [channel], flags: [] };
}

const air = (startUtcMs: number | null = null) =>
  table({ file: 'air.csv', quantity: 'pressure-altitude', from: 0, hz: 5, seconds: 1800, reads: altitude, startUtcMs });
const coarse = (s: number) => 3 * Math.round(altitude(s) / 3);
const monitor = (from: number, startUtcMs: number | null = null) =>
  table({ file: 'monitor.csv', quantity: 'reported-altitude', from, hz: 1, seconds: 1500, reads: coarse, startUtcMs });

describe('the shift between two recorders', () => {
  test.each([37.4, 120.25, -42.7])('a start %d s later is found within its uncertainty', (truth) => {
    const { shifts, alignment, questions } = alignTables([air(), monitor(truth)]);
    expect(questions).toEqual([]);
    expect(alignment[0]?.u95).toBeLessThan(1);
    expect(Math.abs((shifts[1] ?? 0) - truth)).toBeLessThan(0.3);
    expect(alignment[0]?.by).toContain('reported-altitude');
  });

  test('clocks that are wrong by minutes do not mislead it', () => {
    const { shifts } = alignTables([air(1e12), monitor(60, 1e12 + 400_000)]);
    expect(Math.abs((shifts[1] ?? 0) - 60)).toBeLessThan(0.3);
  });

  test('a signal that has nothing in common is asked about', () => {
    const strange = (s: number) => 800 + 200 * Math.sin(s / 97 + (s / 300) ** 2);
    const other = table({
      file: 'b.csv',
      quantity: 'pressure-altitude',
      from: 0,
      hz: 1,
      seconds: 1500,
      reads: strange,
    });
    const { shifts, alignment, questions } = alignTables([air(), other]);
    expect(alignment).toEqual([]);
    expect(shifts).toEqual([0, 0]);
    expect(questions).toMatchObject([{ id: 'alignment:b.csv', concerns: ['alignment'], choices: [] }]);
  });

  test('a wave that fits at many shifts is asked about', () => {
    const wave = (s: number) => 500 + 100 * Math.sin(s / 20);
    const [a, b] = [
      table({ file: 'a.csv', quantity: 'gps-altitude', from: 0, hz: 1, seconds: 1500, reads: wave }),
      table({ file: 'b.csv', quantity: 'gps-altitude', from: 30, hz: 1, seconds: 1200, reads: wave }),
    ];
    expect(alignTables([a, b]).questions[0]?.because).toContain('nearly as well');
  });

  test('a shift set by hand overrides, and clocks serve where nothing is shared', () => {
    expect(alignTables([air(), monitor(37.4)], { 'monitor.csv': 12.5 })).toMatchObject({
      shifts: [0, 12.5],
      questions: [],
    });
    const oil = table({
      file: 'oil.csv',
      quantity: 'oil-temperature',
      from: 0,
      hz: 1,
      seconds: 60,
      reads: () => 360,
      startUtcMs: 1e12 + 9000,
    });
    expect(alignTables([air(1e12), oil])).toMatchObject({ shifts: [0, 9], alignment: [{ by: 'clock', u95: 1 }] });
  });
});
