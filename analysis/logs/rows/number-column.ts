/**
 * The numbers of one column while a file is read, as recorders write them: whole numbers of the last decimal, in 16
 * bits, wider where they must be. Turned back they are the numbers as written, to the last bit.
 */
import type { CellKernel } from '../kernel/cell-kernel.ts';
import { MISSING, MOST_PLACES, PLACE } from '../kernel/cells-text.ts';

export interface NumberColumn {
  /** whole numbers of the last decimal; the numbers themselves where they are none */
  values: Int16Array | Int32Array | Float64Array;
  /** decimals of the whole numbers */
  places: number;
  /** rows with a number, count */
  there: number;
  /** of the numbers so far, as they are kept */
  low: number;
  high: number;
  largestStep: number;
  first: number;
  last: number;
}

const TENS = Float64Array.from({ length: MOST_PLACES + 1 }, (_, i) => 10 ** i);
const MISSING_SHORT = -(2 ** 15);
const LARGEST_SHORT = 2 ** 15 - 1;
const LARGEST = 2 ** 31 - 1;

/**
 * An empty column.
 * @param capacity rows to make room for, count
 * @returns the column
 */
export function numberColumn(capacity: number): NumberColumn {
  return {
    values: new Int16Array(capacity),
    places: 0,
    there: 0,
    low: Number.POSITIVE_INFINITY,
    high: Number.NEGATIVE_INFINITY,
    largestStep: 0,
    first: Number.NaN,
    last: Number.NaN,
  };
}

/**
 * The whole number by which a column of so many decimals keeps a number.
 * @param value the number, or NaN for none
 * @param places decimals kept, count
 * @returns the whole number, or NaN where none of 32 bits stands for exactly this number
 */
export function wholeOf(value: number, places: number): number {
  if (Number.isNaN(value)) return MISSING;
  const tens = TENS[places] ?? 1;
  const whole = Math.round(value * tens);
  return Math.abs(whole) <= LARGEST && whole / tens === value ? whole : Number.NaN;
}

/**
 * Make a column able to keep a number: more decimals, else the numbers themselves.
 * @param column the column; changed
 * @param rows rows filled, count
 * @param value the number
 */
export function makeFit(column: NumberColumn, rows: number, value: number): void {
  if (column.values instanceof Float64Array) return;
  for (let places = column.places; places <= MOST_PLACES; places += 1) {
    const whole = wholeOf(value, places);
    if (Number.isNaN(whole)) continue;
    const factor = (TENS[places] ?? 1) / (TENS[column.places] ?? 1);
    const span = Math.max(Math.abs(column.low), Math.abs(column.high));
    if (column.there > 0 && span * factor > LARGEST) break;
    widen(column, Math.max(Math.abs(whole), column.there > 0 ? span * factor : 0));
    if (places > column.places) scale(column, rows, factor);
    column.places = places;
    return;
  }
  toNumbers(column, rows);
}

/** Whole numbers of 16 bits become such of 32, where one of this size does not fit. */
function widen(column: NumberColumn, size: number): void {
  if (size <= LARGEST_SHORT || !(column.values instanceof Int16Array)) return;
  const wide = new Int32Array(column.values.length);
  for (let i = 0; i < wide.length; i += 1) {
    const value = column.values[i] ?? 0;
    wide[i] = value === MISSING_SHORT ? MISSING : value;
  }
  column.values = wide;
}

function scale(column: NumberColumn, rows: number, factor: number): void {
  const { values } = column;
  const gap = gapOf(values);
  for (let i = 0; i < rows; i += 1) {
    const value = values[i] ?? gap;
    if (value !== gap) values[i] = value * factor;
  }
  column.low *= factor;
  column.high *= factor;
  column.largestStep *= factor;
  column.first *= factor;
  column.last *= factor;
}

function toNumbers(column: NumberColumn, rows: number): void {
  const tens = TENS[column.places] ?? 1;
  const gap = gapOf(column.values);
  const numbers = new Float64Array(column.values.length);
  for (let i = 0; i < rows; i += 1) {
    const value = column.values[i] ?? gap;
    numbers[i] = value === gap ? Number.NaN : value / tens;
  }
  column.values = numbers;
  column.places = 0;
  column.low /= tens;
  column.high /= tens;
  column.largestStep /= tens;
  column.first /= tens;
  column.last /= tens;
}

/** The value that stands for no reading; where the numbers themselves are kept it is NaN, which equals nothing. */
export function gapOf(values: NumberColumn['values']): number {
  if (values instanceof Float64Array) return Number.NaN;
  return values instanceof Int16Array ? MISSING_SHORT : MISSING;
}

/**
 * Put one number, the exact way. It counts when its row is accepted.
 * @param column the column; changed
 * @param row the row, count
 * @param value the number, or NaN for none
 */
export function putNumber(column: NumberColumn, row: number, value: number): void {
  if (Number.isNaN(value)) {
    column.values[row] = gapOf(column.values);
    return;
  }
  if (!(column.values instanceof Float64Array)) {
    const whole = wholeOf(value, column.places);
    if (Number.isNaN(whole)) makeFit(column, row, value);
    else widen(column, Math.abs(whole));
  }
  column.values[row] = column.values instanceof Float64Array ? value : wholeOf(value, column.places);
}

/**
 * The number of a row.
 * @param column the column
 * @param row the row, count
 * @returns the number as written, or NaN
 */
export function numberInRow(column: NumberColumn, row: number): number {
  const { values, places } = column;
  const value = values[row] ?? Number.NaN;
  return value === gapOf(values) ? Number.NaN : value / (TENS[places] ?? 1);
}

/**
 * Count a row that was put and accepted.
 * @param column the column; changed
 * @param row the row, count
 */
export function countRow(column: NumberColumn, row: number): void {
  const value = column.values[row] ?? Number.NaN;
  if (Number.isNaN(value) || value === gapOf(column.values)) return;
  const step = Math.abs(value - column.last);
  if (step > column.largestStep) column.largestStep = step;
  if (value < column.low) column.low = value;
  if (value > column.high) column.high = value;
  if (column.there === 0) column.first = value;
  column.last = value;
  column.there += 1;
}

/**
 * Take a column of a block.
 * @param column the column; changed
 * @param kernel the loops, with the block in their memory
 * @param at place of the block's first number of this column in the memory, 32-bit words
 * @param rows rows of the block, count
 * @param row row of the file that the first one becomes, count
 */
export function takeBlock(column: NumberColumn, kernel: CellKernel, at: number, rows: number, row: number): void {
  const { words } = kernel;
  const end = at + rows;
  const filled = (rows + 7) & ~7;
  const lastWord = words[end - 1] ?? MISSING;
  words.fill(lastWord, end, at + filled);
  words[at - 1] = column.there > 0 ? column.last : (words[at] ?? 0);
  kernel.extent((at - 1) << 2, filled);
  const low = lane(words, PLACE.lowest, Math.min);
  const high = lane(words, PLACE.highest, Math.max);
  const added = lastWord === MISSING ? filled - rows : 0;
  const missing = lane(words, PLACE.missing, (a, b) => a + b) - added;
  if (missing < rows) widen(column, Math.max(Math.abs(low), Math.abs(high)));
  const { values } = column;
  if (values instanceof Int16Array) {
    const from = PLACE.narrow >> 1;
    values.set(kernel.shorts.subarray(from, from + rows), row);
  } else if (values instanceof Int32Array) values.set(words.subarray(at, end), row);
  // Across a gap, or over more than 32 bits hold, steps are taken one by one.
  if (missing > 0 || high - Math.min(low, column.low) > LARGEST || Math.max(high, column.high) - low > LARGEST) {
    for (let i = row; i < row + rows; i += 1) countRow(column, i);
    return;
  }
  column.largestStep = Math.max(column.largestStep, lane(words, PLACE.step, Math.max));
  column.low = Math.min(column.low, low);
  column.high = Math.max(column.high, high);
  if (column.there === 0) column.first = words[at] ?? 0;
  column.last = lastWord;
  column.there += rows;
}

function lane(words: Int32Array, place: number, join: (a: number, b: number) => number): number {
  const at = place >> 2;
  const [a = 0, b = 0, c = 0, d = 0] = [words[at], words[at + 1], words[at + 2], words[at + 3]];
  return join(join(a, b), join(c, d));
}

/**
 * Make room for more rows.
 * @param column the column; changed
 * @param capacity rows to make room for, count
 */
export function growNumbers(column: NumberColumn, capacity: number): void {
  const { values } = column;
  const made = values instanceof Int16Array ? Int16Array : values instanceof Int32Array ? Int32Array : Float64Array;
  const grown = new made(capacity);
  grown.set(values);
  column.values = grown;
}
