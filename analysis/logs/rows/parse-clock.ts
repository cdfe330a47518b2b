/** The usual forms of dates and times, straight from bytes; anything else is left to the exact way. */
import type { ColumnStore } from './column-store.ts';

const ZERO = 48;
const MOST_PLACES = 9;
const POWERS = Float64Array.from({ length: MOST_PLACES + 1 }, (_, i) => 10 ** i);
/** Zones further from UTC are no zones. */
const MOST_HOURS = 14;

/**
 * Put a cell such as `hh:mm:ss.f`, `yyyy-mm-dd`, `dd/mm/yyyy`, or a date and a time parted by a blank or a T, with or
 * without a zone such as `Z` or `+01:00`. An empty cell is one without a reading.
 * @param bytes of the file, bytes
 * @param from first byte of the cell, count
 * @param separator byte between cells, count
 * @param column the column of times, dates or both; changed
 * @param row where to put the values, count
 * @returns bytes read, -1 when the cell is anything else
 */
export function parseClockCell(
  bytes: Uint8Array,
  from: number,
  separator: number,
  column: ColumnStore,
  row: number,
): number {
  const { kind, first, second, offsets } = column;
  if (endsAt(bytes, from, separator)) {
    first[row] = Number.NaN;
    if (kind === 'date-time') second[row] = Number.NaN;
    return 0;
  }
  let at = from;
  if (kind !== 'time') {
    at = parseDate(bytes, at, row, first);
    if (at < 0 || kind === 'date') return at >= 0 && endsAt(bytes, at, separator) ? at - from : -1;
    const between = bytes[at];
    if (between !== 32 && between !== 84) return -1;
    at += 1;
  }
  at = parseTime(bytes, at, row, kind === 'time' ? first : second);
  if (at < 0) return -1;
  if (endsAt(bytes, at, separator)) {
    if (offsets) offsets[row] = Number.NaN;
    return at - from;
  }
  const zone = parseZone(bytes, at);
  if (zone.length === 0 || !endsAt(bytes, at + zone.length, separator)) return -1;
  column.offsets ??= new Float64Array(first.length).fill(Number.NaN);
  column.offsets[row] = zone.minutes;
  return at + zone.length - from;
}

function endsAt(bytes: Uint8Array, at: number, separator: number): boolean {
  const byte = bytes[at];
  return byte === separator || byte === 10 || byte === 13;
}

function twoDigits(bytes: Uint8Array, at: number): number {
  const tens = (bytes[at] ?? 0) - ZERO;
  const ones = (bytes[at + 1] ?? 0) - ZERO;
  return tens >>> 0 < 10 && ones >>> 0 < 10 ? tens * 10 + ones : -1;
}

/** The byte after the time, or -1. */
function parseTime(bytes: Uint8Array, from: number, row: number, into: Float64Array): number {
  const hours = twoDigits(bytes, from);
  const minutes = twoDigits(bytes, from + 3);
  const seconds = twoDigits(bytes, from + 6);
  if (hours < 0 || minutes < 0 || minutes > 59 || seconds < 0 || seconds > 60) return -1;
  if (bytes[from + 2] !== 58 || bytes[from + 5] !== 58) return -1;
  const whole = hours * 3600 + minutes * 60 + seconds;
  if (bytes[from + 8] !== 46) {
    into[row] = whole;
    return from + 8;
  }
  let i = from + 9;
  let mantissa = 0;
  let digit = (bytes[i] ?? 0) - ZERO;
  while (digit >>> 0 < 10) {
    mantissa = mantissa * 10 + digit;
    digit = (bytes[++i] ?? 0) - ZERO;
  }
  const places = i - from - 9;
  if (places === 0 || places > MOST_PLACES) return -1;
  into[row] = whole + mantissa / (POWERS[places] ?? 1);
  return i;
}

/** The byte after the date, or -1. */
function parseDate(bytes: Uint8Array, from: number, row: number, into: Float64Array): number {
  const start = twoDigits(bytes, from);
  const next = twoDigits(bytes, from + 2);
  if (start < 0) return -1;
  const yearFirst = next >= 0;
  const mark = bytes[from + (yearFirst ? 4 : 2)];
  if (mark !== 45 && mark !== 47 && mark !== 46) return -1;
  if (bytes[from + (yearFirst ? 7 : 5)] !== mark) return -1;
  const middle = twoDigits(bytes, from + (yearFirst ? 5 : 3));
  const last = twoDigits(bytes, from + (yearFirst ? 8 : 6));
  if (middle < 0 || last < 0) return -1;
  if (yearFirst) {
    into[row] = (start * 100 + next) * 1e8 + middle * 1e4 + last;
    return from + 10;
  }
  const years = twoDigits(bytes, from + 8);
  if (years < 0) return -1;
  into[row] = start * 1e8 + middle * 1e4 + last * 100 + years;
  return from + 10;
}

const NO_ZONE = { minutes: Number.NaN, length: 0 };
const UTC = { minutes: 0, length: 1 };

/** `Z`, `+hh:mm`, `+hhmm` or `+hh` behind a time. */
function parseZone(bytes: Uint8Array, at: number): { minutes: number; length: number } {
  const sign = bytes[at];
  if (sign === 90) return UTC;
  if (sign !== 43 && sign !== 45) return NO_ZONE;
  const hours = twoDigits(bytes, at + 1);
  if (hours < 0 || hours > MOST_HOURS) return NO_ZONE;
  const colon = bytes[at + 3] === 58 ? 1 : 0;
  const more = twoDigits(bytes, at + 3 + colon);
  if (more > 59 || (more < 0 && colon === 1)) return NO_ZONE;
  const minutes = hours * 60 + Math.max(0, more);
  return { minutes: sign === 45 ? 0 - minutes : minutes, length: more < 0 ? 3 : 5 + colon };
}
