/** The usual forms of dates and times, straight from bytes; anything else is left to the exact way. */

/** What a column holds, as the fast way must know it. `skip` is a column no one named, `beyond` is past the last. */
export const CELL = { number: 0, time: 1, date: 2, dateTime: 3, other: 4, skip: 5, beyond: 6 } as const;

const ZERO = 48;
const MOST_PLACES = 9;
const POWERS = Float64Array.from({ length: MOST_PLACES + 1 }, (_, i) => 10 ** i);

/**
 * Read `hh:mm:ss.f`, `yyyy-mm-dd`, `dd/mm/yyyy`, or a date and a time parted by a blank or a T.
 * @param bytes of the file, bytes
 * @param from first byte of the cell, count
 * @param kind one of CELL, count
 * @param row where to put the values, count
 * @param first packed dates, or seconds where the cell is a time alone
 * @param second seconds, where the cell holds both
 * @returns bytes read, 0 when the cell is anything else
 */
export function parseClockCell(
  bytes: Uint8Array,
  from: number,
  kind: number,
  row: number,
  first: Float64Array,
  second: Float64Array,
): number {
  if (kind === CELL.time) return parseTime(bytes, from, row, first);
  const date = parseDate(bytes, from, row, first);
  if (date === 0 || kind === CELL.date) return date;
  const between = bytes[from + date];
  if (between !== 32 && between !== 84) return 0;
  const time = parseTime(bytes, from + date + 1, row, second);
  return time === 0 ? 0 : date + 1 + time;
}

function twoDigits(bytes: Uint8Array, at: number): number {
  const tens = (bytes[at] ?? 0) - ZERO;
  const ones = (bytes[at + 1] ?? 0) - ZERO;
  return tens >>> 0 < 10 && ones >>> 0 < 10 ? tens * 10 + ones : -1;
}

function parseTime(bytes: Uint8Array, from: number, row: number, into: Float64Array): number {
  const hours = twoDigits(bytes, from);
  const minutes = twoDigits(bytes, from + 3);
  const seconds = twoDigits(bytes, from + 6);
  if (hours < 0 || minutes < 0 || minutes > 59 || seconds < 0 || seconds > 60) return 0;
  if (bytes[from + 2] !== 58 || bytes[from + 5] !== 58) return 0;
  const whole = hours * 3600 + minutes * 60 + seconds;
  if (bytes[from + 8] !== 46) {
    into[row] = whole;
    return 8;
  }
  let i = from + 9;
  let mantissa = 0;
  let digit = (bytes[i] ?? 0) - ZERO;
  while (digit >>> 0 < 10) {
    mantissa = mantissa * 10 + digit;
    digit = (bytes[++i] ?? 0) - ZERO;
  }
  const places = i - from - 9;
  if (places === 0 || places > MOST_PLACES) return 0;
  into[row] = whole + mantissa / (POWERS[places] ?? 1);
  return i - from;
}

function parseDate(bytes: Uint8Array, from: number, row: number, into: Float64Array): number {
  const start = twoDigits(bytes, from);
  const next = twoDigits(bytes, from + 2);
  if (start < 0) return 0;
  const yearFirst = next >= 0;
  const mark = bytes[from + (yearFirst ? 4 : 2)];
  if (mark !== 45 && mark !== 47 && mark !== 46) return 0;
  if (bytes[from + (yearFirst ? 7 : 5)] !== mark) return 0;
  const middle = twoDigits(bytes, from + (yearFirst ? 5 : 3));
  const last = twoDigits(bytes, from + (yearFirst ? 8 : 6));
  if (middle < 0 || last < 0) return 0;
  if (yearFirst) {
    into[row] = (start * 100 + next) * 1e8 + middle * 1e4 + last;
    return 10;
  }
  const years = twoDigits(bytes, from + 8);
  if (years < 0) return 0;
  into[row] = start * 1e8 + middle * 1e4 + last * 100 + years;
  return 10;
}
