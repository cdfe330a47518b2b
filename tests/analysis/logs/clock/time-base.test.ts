/** One time base from any clock. Expected times are worked by hand from the stamps written. */
import { describe, expect, it } from 'vitest';
import { buildTimeBase, type TimeColumn } from '../../../../analysis/logs/clock/time-base.ts';

const two = (n: number) => String(n).padStart(2, '0');
const hms = (s: number) => `${two(Math.floor(s / 3600) % 24)}:${two(Math.floor(s / 60) % 60)}:${two(s % 60)}`;
const count = <T>(n: number, of: (i: number) => T) => Array.from({ length: n }, (_, i) => of(i));
const TEN = 36_000;
let index = 0;
const column = (name: string, unitText: string, texts: string[] | null, numbers: number[] | null): TimeColumn => ({
  column: name,
  index: index++,
  name,
  unitText,
  texts,
  numbers: numbers ? Float64Array.from(numbers) : null,
});
const texts = (name: string, cells: string[], unit = '') => column(name, unit, cells, null);
const numbers = (name: string, cells: number[], unit = '') => column(name, unit, null, cells);
const build = (columns: TimeColumn[], options: Partial<Parameters<typeof buildTimeBase>[2]> = {}) => {
  const rows = columns[0]?.texts?.length ?? columns[0]?.numbers?.length ?? 0;
  const built = buildTimeBase(rows, columns, { breaks: [], ...options });
  const { time } = built;
  if (time) {
    expect(time.seconds[0]).toBe(0);
    for (let i = 1; i < rows; i += 1) expect(time.seconds[i]).toBeGreaterThanOrEqual(time.seconds[i - 1] ?? 0);
  }
  return { ...built, kinds: built.flags.map((one) => one.kind), time };
};

describe('a plain clock', () => {
  it.each([
    ['Z', '2031-05-04T10:00:00Z', 'UTC'],
    ['+01:00', '2031-05-04T10:00:00+01:00', '+01:00'],
    ['-05:30', '2031-05-04T10:00:00-05:30', '-05:30'],
  ])('in ISO with %s', (zone, start, name) => {
    const { time, kinds } = build([
      texts(
        'Timestamp',
        count(60, (i) => `2031-05-04T${hms(TEN + i)}${zone}`),
      ),
    ]);
    expect(time).toMatchObject({ start, zone: name, durationSeconds: 59, sampleRateHz: 1 });
    expect(time?.startUtcMs).toBe(Date.parse(start));
    expect(kinds).toEqual([]);
  });

  it('in two columns and an offset column', () => {
    const columns = [
      texts(
        'Lcl Date',
        count(60, () => '2031-05-04'),
      ),
      texts(
        'Lcl Time',
        count(60, (i) => hms(TEN + i)),
      ),
      texts(
        'UTCOfst',
        count(60, () => '-07:00'),
      ),
    ];
    expect(build(columns).time).toMatchObject({ start: '2031-05-04T10:00:00-07:00', zone: '-07:00' });
  });

  it('whose name says UTC, or nothing', () => {
    const date = texts(
      'Date',
      count(9, () => '2031-05-04'),
    );
    const cells = count(9, (i) => hms(TEN + i));
    expect(build([date, texts('UTC Time', cells)]).time).toMatchObject({ start: '2031-05-04T10:00:00Z', zone: 'UTC' });
    const open = build([date, texts('Time', cells)]);
    expect(open.time).toMatchObject({ start: null, zone: 'unknown', durationSeconds: 8 });
    expect(open.kinds).toEqual(['zone-unknown']);
    expect(build([date, texts('Time', cells)], { map: { offset: '+02:00' } }).time?.start).toBe(
      '2031-05-04T10:00:00+02:00',
    );
  });

  it.each([
    [1, 1],
    [1e3, 1],
    [1e6, 1],
  ])('in epoch times %d', (factor) => {
    const { time } = build([
      numbers(
        'Epoch',
        count(60, (i) => (1_935_662_400 + i * 0.5) * factor),
      ),
    ]);
    expect(time).toMatchObject({ startUtcMs: 1_935_662_400_000, zone: 'UTC', durationSeconds: 29.5, sampleRateHz: 2 });
  });

  it.each([
    ['s', 1, 59],
    ['ms', 200, 11.8],
    ['min', 0.5, 1770],
  ])('elapsed in %s', (unit, step, duration) => {
    const { time } = build([
      numbers(
        'Elapsed',
        count(60, (i) => 7 + i * step),
        unit,
      ),
    ]);
    expect(time?.durationSeconds).toBeCloseTo(duration, 6);
    expect(time).toMatchObject({ start: null, zone: 'unknown' });
  });

  it('elapsed as hours, minutes, seconds', () => {
    const { time, kinds } = build([
      texts(
        'Elapsed',
        count(60, (i) => `0:00:${two(i)}`),
      ),
    ]);
    expect(time?.durationSeconds).toBe(59);
    expect(kinds).toEqual([]);
  });

  it('of twelve hours, over noon', () => {
    const cells = count(60, (i) => (i < 30 ? `11:59:${30 + i} AM` : `12:00:${two(i - 30)} PM`));
    expect(
      build([
        texts(
          'Date',
          count(60, () => '2031-05-24'),
        ),
        texts('Time', cells),
      ]).time?.durationSeconds,
    ).toBe(59);
  });

  it('given by the rate alone, or not at all', () => {
    expect(buildTimeBase(11, [], { breaks: [], sampleRateHz: 5 }).time?.durationSeconds).toBe(2);
    expect(buildTimeBase(11, [], { breaks: [] }).problems[0]?.code).toBe('no-time');
  });
});

describe('dates', () => {
  const on = (dates: string[], map?: { dayFirst?: boolean; date?: string }) =>
    build(
      [
        texts('Date', dates),
        texts(
          'UTC',
          dates.map((_, i) => hms(TEN + i)),
        ),
      ],
      map ? { map } : {},
    );
  it.each([
    ['24/05/2031', '2031-05-24T10:00:00Z'],
    ['05/24/2031', '2031-05-24T10:00:00Z'],
    ['4 May 2031', '2031-05-04T10:00:00Z'],
    ['05/05/2031', '2031-05-05T10:00:00Z'],
    ['04.05.2031', '2031-05-04T10:00:00Z'],
  ])('%s', (date, start) => {
    const { time, questions } = on(count(5, () => date));
    expect(time?.start).toBe(start);
    expect(questions).toEqual([]);
  });

  it('that stay open are asked for, and answered by the map', () => {
    const dates = count(5, () => '05/04/2031');
    const open = on(dates);
    expect(open.questions[0]).toMatchObject({
      id: 'date-order',
      choices: ['day first', 'month first'],
      concerns: ['date'],
    });
    expect(open.kinds).toContain('date-ambiguous');
    expect(open.time).toMatchObject({ start: null, durationSeconds: 4 });
    expect(on(dates, { dayFirst: true }).time?.start).toBe('2031-04-05T10:00:00Z');
    expect(on(dates, { dayFirst: false }).time?.start).toBe('2031-05-04T10:00:00Z');
  });

  it('told by the days that follow each other', () => {
    const cells = count(60, (i) => hms(86_370 + i));
    const dates = count(60, (i) => (i < 30 ? '04/05/2031' : '05/05/2031'));
    const { time, questions, kinds } = build([texts('Date', dates), texts('UTC', cells)]);
    expect(questions).toEqual([]);
    expect(time).toMatchObject({ start: '2031-05-04T23:59:30Z', durationSeconds: 59 });
    expect(kinds).toEqual(['midnight']);
  });

  it('that are missing', () => {
    const cells = count(60, (i) => hms(86_370 + i));
    const { time, kinds } = build([texts('Time', cells)]);
    expect(time).toMatchObject({ start: null, durationSeconds: 59 });
    expect(kinds).toEqual(expect.arrayContaining(['no-date', 'midnight']));
    expect(build([texts('Time UTC', cells)], { map: { date: '2031-05-04' } }).time?.start).toBe('2031-05-04T23:59:30Z');
  });
});

describe('an uneven clock', () => {
  const z = (s: number) => `2031-05-04T${hms(TEN + s)}Z`;
  it('with whole seconds at 5 Hz, met in mid-second', () => {
    const { time, kinds } = build([
      texts(
        'Timestamp',
        count(98, (i) => z(Math.floor((i + 2) / 5))),
      ),
    ]);
    expect(kinds).toEqual(['duplicate-timestamps']);
    expect(time?.durationSeconds).toBeCloseTo(19.4, 6);
    expect(time?.sampleRateHz).toBeCloseTo(5, 6);
    expect(time?.start).toBe('2031-05-04T10:00:00.400Z');
  });

  it('with a gap', () => {
    const { flags } = build([
      numbers(
        'Time',
        count(60, (i) => (i < 30 ? i : i + 40)),
        's',
      ),
    ]);
    expect(flags).toMatchObject([{ kind: 'gap', fromSeconds: 29, toSeconds: 70 }]);
  });

  it('with a change of rate', () => {
    const { flags } = build([
      numbers(
        'Time',
        count(60, (i) => (i < 40 ? i : 39 + (i - 39) * 6)),
        's',
      ),
    ]);
    expect(flags).toMatchObject([{ kind: 'rate-change', fromSeconds: 39 }]);
  });

  it('with missing cells', () => {
    const { time, flags } = build([
      texts(
        'Timestamp',
        count(60, (i) => (i > 9 && i < 13 ? '' : z(i))),
      ),
    ]);
    expect([...(time?.seconds.slice(9, 14) ?? [])]).toEqual([9, 10, 11, 12, 13]);
    expect(flags).toMatchObject([{ kind: 'duplicate-timestamps' }]);
    expect(flags[0]?.message).toContain('3 rows have no time');
  });

  it('set by a satellite fix', () => {
    const cells = count(60, (i) => (i < 20 ? `2000-01-01T${hms(i)}Z` : z(i)));
    const { time, flags } = build([texts('Timestamp', cells)]);
    expect(flags).toMatchObject([{ kind: 'clock-jump', fromSeconds: 19, toSeconds: 20 }]);
    expect(time).toMatchObject({ durationSeconds: 59, start: '2031-05-04T10:00:00Z' });
    expect(time?.segments).toHaveLength(2);
  });

  it('set from midnight without a date, and set back', () => {
    const unset = build([
      texts(
        'Time',
        count(60, (i) => hms(i < 20 ? i : TEN + i)),
      ),
    ]);
    expect(unset.kinds).toContain('clock-jump');
    expect(unset.time?.durationSeconds).toBe(59);
    const back = build([
      texts(
        'Timestamp',
        count(60, (i) => z(i < 20 ? 900 + i : i)),
      ),
    ]);
    expect(back.kinds).toEqual(['clock-jump']);
    expect(back.time).toMatchObject({ durationSeconds: 59, start: '2031-05-04T10:00:00Z' });
  });

  it('that starts again after a power cycle', () => {
    const { time, kinds } = build(
      [
        numbers(
          'Elapsed',
          count(60, (i) => i % 30),
          's',
        ),
      ],
      { breaks: [30] },
    );
    expect(kinds).toEqual(['elapsed-reset', 'power-cycle']);
    expect(time?.durationSeconds).toBe(59);
    expect(time?.segments.map((one) => [one.fromSeconds, one.toSeconds])).toEqual([
      [0, 29],
      [30, 59],
    ]);
  });

  it('with dates across a power cycle keeps the true pause', () => {
    const { time, kinds } = build(
      [
        texts(
          'Timestamp',
          count(60, (i) => z(i < 30 ? i : i + 600)),
        ),
      ],
      { breaks: [30] },
    );
    expect(kinds).toEqual(['power-cycle']);
    expect(time?.durationSeconds).toBe(659);
  });
});
