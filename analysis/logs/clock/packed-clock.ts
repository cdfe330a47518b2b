/** Dates and times of day run together into one number: `20310504`, `040531`, `100059.25`. */
import { packDate } from './clock-cell.ts';
import { dayNumber } from './date-order.ts';

export interface PackedDates {
  /** from packDate, one a row */
  dates: Float64Array;
  /** orders the six figures may be in, where nothing tells; one or none where it is told */
  open: readonly DateFigures[];
}

export type DateFigures = 'dmy' | 'mdy' | 'ymd';

const ORDERS: readonly DateFigures[] = ['dmy', 'mdy', 'ymd'];

/**
 * The order that a format names.
 * @param format such as `ddmmyy`, `yymmdd`, `MM/DD/YYYY`, text
 * @returns the order, or null where it names none
 */
export function figuresIn(format: string): DateFigures | null {
  const m = /(d{1,2}|m{1,3}|y{2,4})[-/. ]?(d{1,2}|m{1,3}|y{2,4})[-/. ]?(d{1,2}|m{1,3}|y{2,4})/i.exec(format);
  const order = m
    ?.slice(1)
    .map((letters) => letters[0]?.toLowerCase())
    .join('');
  return ORDERS.find((one) => one === order) ?? null;
}

/**
 * A column of packed dates.
 * @param numbers one a row; NaN where missing
 * @param told order named by the map or the header, or null
 * @param dayFirst what a person said of day and month, or undefined
 * @returns the dates, or null where the numbers are none
 */
export function packedDates(
  numbers: Float64Array,
  told: DateFigures | null,
  dayFirst: boolean | undefined,
): PackedDates | null {
  const different = [...new Set(numbers)].filter((value) => Number.isFinite(value));
  if (different.length === 0 || different.length > 400) return null;
  if (different.every((value) => value > 19_700_000 && isDate(yearFirst(value))))
    return { dates: numbers.map(yearFirst), open: [] };
  const eight = (value: number) => packDate(Math.floor(value / 1e6), Math.floor(value / 1e4) % 100, value % 1e4);
  const fourYear = different.every(
    (value) => value >= 1e6 && value < 32e6 && value % 1e4 >= 1970 && value % 1e4 < 2100,
  );
  // Which of day and month comes first is left to what tells it for written dates.
  if (fourYear && different.every((value) => isDate(eight(value)))) return { dates: numbers.map(eight), open: [] };
  if (!different.every((value) => Number.isInteger(value) && value >= 10_100 && value < 1e6)) return null;
  const possible = ORDERS.filter((order) => different.every((value) => isDate(sixFigures(value, order))));
  const wanted = told ?? (dayFirst === undefined ? null : dayFirst ? 'dmy' : 'mdy');
  const [first] = wanted !== null && possible.includes(wanted) ? [wanted] : possible;
  if (first === undefined) return null;
  const open = wanted === first || possible.length === 1 ? [] : possible;
  return { dates: numbers.map((value) => sixFigures(value, first)), open };
}

const yearFirst = (value: number) => packDate(Math.floor(value / 1e4), Math.floor(value / 100) % 100, value % 100);

/** With the year in full, so that the order is settled. */
function sixFigures(value: number, order: DateFigures): number {
  const [a, b, c] = [Math.floor(value / 1e4), Math.floor(value / 100) % 100, value % 100];
  if (order === 'ymd') return packDate(2000 + a, b, c);
  return order === 'dmy' ? packDate(2000 + c, b, a) : packDate(2000 + c, a, b);
}

function isDate(packed: number): boolean {
  const year = Math.floor(packed / 1e8);
  if (year > 31 && (year < 1970 || year > 2100)) return false;
  return !(Number.isNaN(dayNumber(packed, true)) && Number.isNaN(dayNumber(packed, false)));
}

/**
 * A column of packed times of day, `hhmmss` with or without a fraction.
 * @param numbers one a row; NaN where missing
 * @param certain true where the header says that they are, or a packed date stands beside them
 * @returns seconds of the day, one a row, or null where the numbers may as well be plain seconds
 */
export function packedTimes(numbers: Float64Array, certain: boolean): Float64Array | null {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of numbers) {
    if (Number.isNaN(value)) continue;
    if (!(value >= 0 && value < 240_000) || value % 100 >= 61 || Math.floor(value / 100) % 100 >= 60) return null;
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  // Plain seconds pass sixty and a hundred; those of a day end at 86 400.
  const told = certain || high >= 86_400 || high - low > 100;
  if (!(high >= low) || !told) return null;
  return numbers.map((v) => Math.floor(v / 1e4) * 3600 + (Math.floor(v / 100) % 100) * 60 + fraction(v % 100));
}

/** To a microsecond: the figures before the point leave no more. */
const fraction = (seconds: number) => Math.round(seconds * 1e6) / 1e6;
