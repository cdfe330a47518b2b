/** Dates and times as cells write them. Which of two numbers is the month is left open here. */

/** A date as three numbers in the order written; `named` when the month was a word, and then the order is known. */
export interface ClockCell {
  /** first, second, third number of the date; NaN when the cell has no date */
  a: number;
  b: number;
  c: number;
  /** s since midnight (may pass 24 h in an elapsed time); NaN when the cell has no time */
  secondsOfDay: number;
  /** minutes east of UTC; NaN when the cell does not say */
  offsetMinutes: number;
  /** digits after the decimal mark of the seconds */
  places: number;
  twelveHour: boolean;
}

const MONTHS = [
  ['jan'], ['feb'], ['mar', 'mär', 'mrz'], ['apr', 'avr'], ['may', 'mai', 'mag', 'mei'], ['jun', 'giu', 'juin'],
  ['jul', 'lug', 'juil'], ['aug', 'aou', 'aoû', 'ago'], ['sep', 'set'], ['oct', 'okt', 'ott'], ['nov'],
  ['dec', 'dez', 'dic', 'déc'],
]; // biome-ignore format: a list

const DATE_NUMBERS = String.raw`(\d{1,4})([-/.])(\d{1,2})\2(\d{1,4})\.?`;
const DATE_WORD = String.raw`(?:(\d{1,2})[-/. ]*([A-Za-zäéû]{3,9})\.?[-/, ]*(\d{4}|\d{2})|([A-Za-zäéû]{3,9})\.?[-/ ]*(\d{1,2})(?:st|nd|rd|th)?[-/, ]+(\d{4}|\d{2}))`;
const TIME = String.raw`(\d{1,5}):(\d{1,2})(?::(\d{1,2})(?:[.,:](\d{1,9}))?)?\s*([AaPp]\.?[Mm]\.?)?`;
const ZONE = String.raw`(Z|UTC|GMT|(?:UTC|GMT)?\s*[+-]\d{1,2}:?\d{0,2})?`;
const WEEKDAY = String.raw`(?:(?:Mon|Tue|Wed|Thu|Fri|Sat|Sun)[a-z]*,?\s+)?`;
const WHOLE = new RegExp(
  String.raw`^${WEEKDAY}(?:${DATE_NUMBERS}|${DATE_WORD})?(?:(?<=\d)\s*[T,_ ]\s*|)(?:${TIME})?\s*${ZONE}$`,
  'i',
);

/** The basic form of ISO 8601, in which figures follow each other: `20310504T100000Z`. */
const BASIC = /^(\d{4})(\d\d)(\d\d)[T ](\d\d)(\d\d)(\d\d)?(?=[.,Z+ -]|$)/i;

/** Minutes and seconds of a watch that was started: a fraction tells them from hours and minutes. */
const MINUTES = /^(\d{1,4}):([0-5]\d[.,]\d{1,3})$/;

/**
 * Read a cell as a date, a time of day, or both.
 * @param text the cell as written, text
 * @returns its parts, or null where it is neither
 */
export function readClockCell(text: string): ClockCell | null {
  const cell = text
    .trim()
    .replace(BASIC, '$1-$2-$3T$4:$5:$6')
    .replace(/:(?=[Z+ -]|$)/i, '')
    .replace(
      MINUTES,
      (_, minutes: string, rest: string) => `${Math.floor(Number(minutes) / 60)}:${Number(minutes) % 60}:${rest}`,
    );
  if (cell.length < 4 || cell.length > 48) return null;
  const m = WHOLE.exec(cell);
  if (!m) return null;
  const out: ClockCell = {
    a: Number.NaN,
    b: Number.NaN,
    c: Number.NaN,
    secondsOfDay: Number.NaN,
    offsetMinutes: Number.NaN,
    places: 0,
    twelveHour: false,
  };
  if (m[1] !== undefined) {
    out.a = Number(m[1]);
    out.b = Number(m[3]);
    out.c = Number(m[4]);
    const last = (m[4] ?? '').length;
    if (m[1].length === 4 ? last > 2 : m[1].length === 3 || (last !== 2 && last !== 4)) return null;
  } else if (m[6] !== undefined || m[8] !== undefined) {
    const month = monthOf(m[6] ?? m[8] ?? '');
    if (month === 0) return null;
    const yearText = m[7] ?? m[10] ?? '';
    out.a = fullYear(Number(yearText));
    out.b = month;
    out.c = Number(m[5] ?? m[9]);
  }
  if (m[11] !== undefined) {
    const seconds = timeOfDay(m, out);
    if (Number.isNaN(seconds)) return null;
    out.secondsOfDay = seconds;
  }
  if (Number.isNaN(out.a) && Number.isNaN(out.secondsOfDay)) return null;
  if (m[16] !== undefined && m[16] !== '') {
    if (Number.isNaN(out.secondsOfDay)) return null;
    out.offsetMinutes = offsetIn(m[16]);
  }
  return out;
}

function timeOfDay(m: RegExpExecArray, out: ClockCell): number {
  let hours = Number(m[11]);
  const minutes = Number(m[12]);
  const seconds = Number(m[13] ?? 0);
  if (minutes >= 60 || seconds > 60) return Number.NaN;
  const half = m[15]?.toLowerCase();
  if (half) {
    if (hours < 1 || hours > 12) return Number.NaN;
    out.twelveHour = true;
    hours = (hours % 12) + (half.startsWith('p') ? 12 : 0);
  }
  out.places = (m[14] ?? '').length;
  const whole = hours * 3600 + minutes * 60 + seconds;
  return out.places === 0 ? whole : whole + Number(`0.${m[14]}`);
}

function monthOf(word: string): number {
  const lower = word.toLowerCase();
  return 1 + MONTHS.findIndex((starts) => starts.some((start) => lower.startsWith(start)));
}

/**
 * A year of two digits in full: 70 to 99 in the last century, others in this one (common practice, no source).
 * @param year year as written, count
 * @returns the year with four digits
 */
export function fullYear(year: number): number {
  if (year >= 100) return year;
  return year >= 70 ? 1900 + year : 2000 + year;
}

/**
 * Minutes east of UTC that a zone text says.
 * @param text `Z`, `UTC`, `+01:00`, `-0500`, `-5`, text
 * @returns minutes, or NaN where it says none
 */
export function offsetIn(text: string): number {
  const zone = text
    .trim()
    .toUpperCase()
    .replace(/^(UTC|GMT)\s*(?=[+-])/, '');
  if (zone === 'Z' || zone === 'UTC' || zone === 'GMT' || zone === 'ZULU') return 0;
  const m = /^([+-]?)(\d{1,2})(?::?(\d{2}))?$/.exec(zone);
  if (!m) return Number.NaN;
  const minutes = Number(m[2]) * 60 + Number(m[3] ?? 0);
  if (minutes > 15 * 60) return Number.NaN;
  return m[1] === '-' ? -minutes : minutes;
}

/**
 * Three date numbers in one, exact in a double.
 * @param a first number, count
 * @param b second number, count
 * @param c third number, count
 * @returns packed date
 */
export function packDate(a: number, b: number, c: number): number {
  return a * 1e8 + b * 1e4 + c;
}

/**
 * The three numbers of a packed date.
 * @param packed from packDate, number
 * @returns first, second, third number
 */
export function unpackDate(packed: number): [number, number, number] {
  const a = Math.floor(packed / 1e8);
  const b = Math.floor((packed - a * 1e8) / 1e4);
  return [a, b, packed - a * 1e8 - b * 1e4];
}
