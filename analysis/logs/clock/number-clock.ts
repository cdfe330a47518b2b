/** Time written as plain numbers: epoch, serial days, satellite weeks, elapsed. */
import { flag } from '../../remarks/index.ts';
import { offsetIn, packDate } from './clock-cell.ts';
import { type RawClock, rawClock, type TimeColumn } from './raw-clock.ts';

// 2000-01-01 and 2100-01-01, s since 1970.
const EARLIEST = 946_684_800;
const LATEST = 4_102_444_800;
/** 1970-01-01 in the days of a spreadsheet. */
const SERIAL_OF_1970 = 25_569;
/** 1980-01-06, s since 1970. */
const SATELLITE_EPOCH = 315_964_800;
const UNITS: readonly [RegExp, number, string][] = [
  [/^(us|µs|μs|usec|micro ?s(ec(onds?)?)?)$/, 1e-6, 'microseconds'],
  [/^(ms|msec|millis|milli ?s(ec(onds?)?)?)$/, 1e-3, 'milliseconds'],
  [/^(s|sec|secs|seconds?)$/, 1, 'seconds'],
  [/^(m|min|mins|minutes?)$/, 60, 'minutes'],
  [/^(h|hr|hrs|hours?)$/, 3600, 'hours'],
];

function ends(values: Float64Array): { first: number; last: number; whole: boolean; step: number } {
  let first = Number.NaN;
  let last = Number.NaN;
  let whole = true;
  const steps: number[] = [];
  for (const value of values) {
    if (Number.isNaN(value)) continue;
    if (Number.isNaN(first)) first = value;
    else if (value > last && steps.length < 501) steps.push(value - last);
    if (!Number.isInteger(value)) whole = false;
    last = value;
  }
  steps.sort((x, y) => x - y);
  return { first, last, whole, step: steps[steps.length >> 1] ?? 0 };
}

/**
 * Read a numeric column as epoch time.
 * @param column the column
 * @returns a clock in UTC, or null where its numbers are no plausible epoch between 2000 and 2100
 */
export function epochClock(column: TimeColumn): RawClock | null {
  if (!column.numbers) return null;
  const { last } = ends(column.numbers);
  for (const [factor, word] of [
    [1, 'seconds'],
    [1e-3, 'milliseconds'],
    [1e-6, 'microseconds'],
    [1e-9, 'nanoseconds'],
  ] as const) {
    if (!(last * factor >= EARLIEST && last * factor <= LATEST)) continue;
    const per = Math.round(1 / factor);
    const clock = rawClock(
      'absolute',
      column.numbers.map((value) => value / per),
      [column.index],
      `"${column.column}" read as ${word} since 1970 in UTC`,
    );
    return { ...clock, offsetMinutes: 0, wall: false };
  }
  return null;
}

/**
 * Read a numeric column as days since the end of 1899, as spreadsheets count (from memory).
 * @param column the column
 * @param offset offset told by the map, text
 * @returns a clock, its zone unknown without the map, or null where the numbers are no such days
 */
export function serialDayClock(column: TimeColumn, offset?: string): RawClock | null {
  if (!column.numbers) return null;
  const { first, last, whole, step } = ends(column.numbers);
  // In seconds no recorder takes steps so small.
  if (whole || !(first > 36_526 && last < 73_051) || !(step < 0.002)) return null;
  // Rounded to a tenth of a millisecond: the fraction of a day is not exact.
  const raw = column.numbers.map((value) => Math.round((value - SERIAL_OF_1970) * 864_000_000) / 10_000);
  const clock = rawClock('absolute', raw, [column.index], `"${column.column}" read as days of a spreadsheet`);
  if (offset === undefined) {
    clock.flags.push(flag('zone-unknown', 'the file does not say in which zone its clock runs'));
    return clock;
  }
  const offsetMinutes = offsetIn(offset);
  return { ...clock, offsetMinutes, raw: raw.map((value) => value - offsetMinutes * 60) };
}

/**
 * Read a share of the day, as spreadsheets write a time, beside a whole day of theirs.
 * @param time the share, 0 to 1
 * @param date days since the end of 1899, or none
 * @returns packed dates and seconds of the day, or null where the numbers are none
 */
export function dayShare(
  time: TimeColumn,
  date: TimeColumn | undefined,
): { dates: Float64Array | null; seconds: Float64Array } | null {
  if (!time.numbers || time.unitText !== '') return null;
  const { last, whole, step } = ends(time.numbers);
  // As seconds the file would be over within one, at a rate that no recorder has.
  if (whole || !(last < 1 && last >= 0) || !(step > 0 && step < 0.002) || time.numbers.some((v) => v < 0 || v >= 1)) {
    return null;
  }
  const isDay = (value: number) => Number.isNaN(value) || (Number.isInteger(value) && value > 36_526 && value < 73_051);
  const days = date?.numbers?.every(isDay) ? date.numbers : null;
  const dates = days?.map((value) => {
    if (Number.isNaN(value)) return value;
    const day = new Date((value - SERIAL_OF_1970) * 86_400_000);
    return packDate(day.getUTCFullYear(), day.getUTCMonth() + 1, day.getUTCDate());
  });
  return { dates: dates ?? null, seconds: time.numbers.map((value) => Math.round(value * 864_000_000) / 10_000) };
}

/**
 * Seconds by which satellite time is ahead of UTC (leap seconds since 1980; the list is from memory).
 * @param seconds satellite time as seconds since 1970, s
 * @returns s
 */
function leapSeconds(seconds: number): number {
  const passed = LEAPS.filter(([year, month]) => seconds >= Date.UTC(year, month - 1, 1) / 1000);
  return LEAPS_BEFORE + passed.length;
}

/** Beginnings of the months before which a second was added since 2000 (IERS Bulletin C, from memory). */
const LEAPS: readonly (readonly [year: number, month: number])[] = [
  [2006, 1],
  [2009, 1],
  [2012, 7],
  [2015, 7],
  [2017, 1],
];
const LEAPS_BEFORE = 13;

/**
 * Read satellite week and seconds of the week: from 1980-01-06, ahead of UTC by the leap seconds (from memory).
 * @param week weeks since 1980-01-06
 * @param seconds seconds of the week, s or ms
 * @returns a clock in UTC, or null
 */
export function satelliteWeekClock(week: TimeColumn, seconds: TimeColumn): RawClock | null {
  const weeks = week.numbers;
  const values = seconds.numbers;
  if (!weeks || !values) return null;
  const factor = values.some((value) => value > 604_800) ? 1e-3 : 1;
  const satellite = values.map((value, i) => SATELLITE_EPOCH + (weeks[i] ?? Number.NaN) * 604_800 + value * factor);
  const { last } = ends(satellite);
  if (!(last > EARLIEST)) return null;
  const ahead = leapSeconds(last);
  const raw = satellite.map((value) => value - ahead);
  const note = `"${week.column}" and "${seconds.column}" read as satellite time, ${ahead} s ahead of UTC`;
  return { ...rawClock('absolute', raw, [week.index, seconds.index], note), offsetMinutes: 0, wall: false };
}

/**
 * Read a numeric column as time since some start.
 * @param column the column
 * @param format unit told by the map, text
 * @returns the clock, or null where the numbers do not rise
 */
export function elapsedClock(column: TimeColumn, format?: string): RawClock | null {
  if (!column.numbers) return null;
  const { whole, step } = ends(column.numbers);
  if (!(step > 0)) return null;
  const words = [format ?? '', column.unitText, ...column.name.split(/[\s_.()[\]]+/).slice(-1)].map((word) =>
    word
      .trim()
      .toLowerCase()
      .replace(/^[([]|[)\]]$/g, ''),
  );
  const stated = words.flatMap((word) => UNITS.filter(([pattern]) => pattern.test(word)))[0];
  // A recorder that counts whole numbers by tens or more a row counts milliseconds (common practice, no source).
  const [, factor, word] = stated ?? (whole && step >= 20 ? UNITS[1] : UNITS[2]) ?? [/s/, 1, 'seconds'];
  const per = factor < 1 ? Math.round(1 / factor) : 1;
  const raw = column.numbers.map((value) => (factor < 1 ? value / per : value * factor));
  const assumed = stated ? '' : ' (unit not stated, told by the steps)';
  return rawClock('elapsed', raw, [column.index], `"${column.column}" read as elapsed ${word}${assumed}`);
}
