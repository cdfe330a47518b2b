import { describe, expect, test } from 'vitest';
import { alignTables } from '../../../../analysis/logs/align/align-tables.ts';
import { onCommonClock, onOwnClock, recordingOf, seriesOf } from '../../../../analysis/logs/recording.ts';
import type { LogChannel, LogTable } from '../../../../analysis/logs/table.ts';
import { seededRandom } from '../../../../analysis/numbers/index.ts';

/** Altitude of a made-up flight, m: climbs, levels and small waves, no part like another. */
const altitude = (s: number) =>
  500 + 300 * Math.sin(s / 170) + 90 * Math.sin(s / 41 + (s / 600) ** 2) + 20 * Math.sin(s / 13 + (s / 400) ** 2);

/** A clock that starts late and runs fast or slow, and readings with noise of a seed. */
function parting(shift: number, secondsPerHour: number, seed: number, seconds = 3300): LogTable {
  const random = seededRandom(seed);
  // At its own second s the true time is shift + s + drift s.
  const reads = (s: number) => altitude(s) + 1.5 * random.normal();
  const rate = secondsPerHour / 3600;
  return table({
    file: 'monitor.csv',
    quantity: 'reported-altitude',
    from: 0,
    hz: 1,
    seconds,
    reads: (s) => 3 * Math.round(reads(shift + s + rate * s) / 3),
  });
}

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

describe('two clocks that part', () => {
  const long = (seed: number) => {
    const random = seededRandom(`air ${seed}`);
    const reads = (s: number) => altitude(s) + 1.2 * random.normal();
    return table({ file: 'air.csv', quantity: 'pressure-altitude', from: 0, hz: 5, seconds: 3600, reads });
  };

  test.each([3, -2, 8])('%d s an hour is found, and used for every moment', (truth) => {
    const tables = [long(1), parting(37.4, truth, 2)];
    const { shifts, drifts, alignment, questions } = alignTables(tables);
    expect(questions).toEqual([]);
    const [found] = alignment;
    const { driftSecondsPerHour = 0, driftU95 = 0, u95 = 0 } = found ?? {};
    expect(Math.abs(driftSecondsPerHour - truth)).toBeLessThan(driftU95 * 1.5);
    expect(driftU95).toBeLessThan(1);
    const recording = recordingOf(tables, shifts, drifts);
    for (const own of [0, 1600, 3290]) {
      const common = onCommonClock(recording, 1, own);
      expect(Math.abs(common - (37.4 + own + (truth * own) / 3600))).toBeLessThan(u95 * 1.5);
      expect(onOwnClock(recording, 1, common)).toBeCloseTo(own, 9);
    }
    const series = seriesOf(recording, 'reported-altitude');
    expect(series?.t[1600]).toBeCloseTo(onCommonClock(recording, 1, 1600), 9);
  });

  test('is not found where the clocks keep step, nor over less than twenty minutes', () => {
    let parted = 0;
    for (let seed = 0; seed < 12; seed += 1) {
      const { alignment } = alignTables([long(seed), parting(37.4, 0, 100 + seed)]);
      if (alignment[0]?.driftSecondsPerHour !== undefined) parted += 1;
      expect(Math.abs((alignment[0]?.shiftSeconds ?? 0) - 37.4)).toBeLessThan(0.6);
    }
    expect(parted).toBeLessThanOrEqual(1);
    const { alignment } = alignTables([long(1), parting(37.4, 8, 2, 1100)]);
    expect(alignment[0]).not.toHaveProperty('driftSecondsPerHour');
  });

  test('the interval of the shift holds the truth about as often as it says', () => {
    let held = 0;
    const runs = 24;
    for (let seed = 0; seed < runs; seed += 1) {
      const { alignment } = alignTables([long(seed), parting(12.3, 4, 500 + seed)]);
      const { shiftSeconds = 0, u95 = 0 } = alignment[0] ?? {};
      if (Math.abs(shiftSeconds - 12.3) <= u95) held += 1;
    }
    expect(held).toBeGreaterThanOrEqual(0.85 * runs);
  });
});
