/** The numbers of a column when its file has been read: kept as small as they were written, made wide when wanted. */
import { MISSING } from '../kernel/cells-text.ts';
import { gapOf, type NumberColumn } from './number-column.ts';

/** One stretch of rows of a column. */
export interface NumberPiece {
  /** whole numbers of the last decimal; the numbers themselves where they are none */
  values: Int16Array | Int32Array | Float64Array;
  places: number;
}

/** A column of numbers as written, NaN where missing; plain data, so that it passes between threads. */
export interface KeptNumbers {
  rows: number;
  pieces: NumberPiece[];
  /** rows with a number, count */
  there: number;
  low: number;
  high: number;
  largestStep: number;
}

/**
 * Join the parts of a column that were read apart.
 * @param parts columns with the rows each has
 * @returns the whole
 */
export function keepNumbers(parts: readonly { column: NumberColumn; rows: number }[]): KeptNumbers {
  const kept: KeptNumbers = {
    rows: 0,
    pieces: [],
    there: 0,
    low: Number.POSITIVE_INFINITY,
    high: Number.NEGATIVE_INFINITY,
    largestStep: 0,
  };
  let last = Number.NaN;
  for (const { column, rows } of parts) {
    kept.pieces.push({ values: column.values.subarray(0, rows), places: column.places });
    kept.rows += rows;
    if (column.there === 0) continue;
    const tens = 10 ** column.places;
    kept.there += column.there;
    kept.low = Math.min(kept.low, column.low / tens);
    kept.high = Math.max(kept.high, column.high / tens);
    const across = Math.abs(column.first / tens - last);
    kept.largestStep = Math.max(kept.largestStep, column.largestStep / tens, Number.isNaN(across) ? 0 : across);
    last = column.last / tens;
  }
  return kept;
}

/**
 * Numbers that are there in full.
 * @param values one a row, NaN where missing
 * @returns the same, as a column of one piece
 */
export function keptAsTheyAre(values: Float64Array): KeptNumbers {
  const kept = keepNumbers([]);
  let before = Number.NaN;
  for (const value of values) {
    if (Number.isNaN(value)) continue;
    kept.there += 1;
    if (value < kept.low) kept.low = value;
    if (value > kept.high) kept.high = value;
    const step = Math.abs(value - before);
    if (step > kept.largestStep) kept.largestStep = step;
    before = value;
  }
  return { ...kept, rows: values.length, pieces: [{ values, places: 0 }] };
}

/**
 * All numbers, in another unit where one is wanted.
 * @param kept the column
 * @param factor of the unit, number
 * @param offset added after it, unit wanted
 * @returns one a row, NaN where missing
 */
export function allNumbers(kept: KeptNumbers, factor = 1, offset = 0): Float64Array {
  const out = new Float64Array(kept.rows);
  let row = 0;
  for (const { values, places } of kept.pieces) {
    widen(values, gapOf(values), 10 ** places, factor, offset, out, row);
    row += values.length;
  }
  return out;
}

/** A loop of its own for each kind of array would be faster by a little; this one is met with one kind at most times. */
function widen(
  values: NumberPiece['values'],
  gap: number,
  tens: number,
  factor: number,
  offset: number,
  out: Float64Array,
  at: number,
): void {
  for (let i = 0; i < values.length; i += 1) {
    const value = values[i] ?? gap;
    out[at + i] = value === gap ? Number.NaN : (value / tens) * factor + offset;
  }
}

/**
 * The number of one row.
 * @param kept the column
 * @param row the row, count
 * @returns the number as written, or NaN
 */
export function numberAt(kept: KeptNumbers, row: number): number {
  let left = row;
  for (const { values, places } of kept.pieces) {
    if (left < 0) break;
    if (left < values.length) {
      const value = values[left] ?? MISSING;
      return value === gapOf(values) ? Number.NaN : value / 10 ** places;
    }
    left -= values.length;
  }
  return Number.NaN;
}
