/** The numbers of a column when its file has been read: kept as small as they were written, made wide when wanted. */
import { type EqualRuns, equalRuns, joinRuns } from './equal-runs.ts';
import { countRow, gapOf, type NumberColumn, numberColumn } from './number-column.ts';

/** One stretch of rows of a column. */
export interface NumberPiece {
  /** whole numbers of the last decimal; the numbers themselves where they are none */
  values: Int16Array | Int32Array | Float64Array;
  /** by which they are divided */
  tens: number;
  /** what stands for no reading among them */
  gap: number;
  equal: EqualRuns;
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
  /** of those that are there */
  first: number;
  last: number;
}

/**
 * What is kept of a column that has been read.
 * @param column the column
 * @param rows rows read, count
 * @returns its numbers
 */
export function keepNumbers(column: NumberColumn, rows: number): KeptNumbers {
  const { there, low, high, largestStep, first, last } = column;
  const tens = 10 ** column.places;
  const values = column.values.subarray(0, rows);
  const gap = gapOf(values);
  return {
    rows,
    pieces: rows === 0 ? [] : [{ values, tens, gap, equal: equalRuns(values, gap) }],
    there,
    low: low / tens,
    high: high / tens,
    largestStep: largestStep / tens,
    first: first / tens,
    last: last / tens,
  };
}

/**
 * Join what was kept of stretches that follow each other.
 * @param parts the stretches in order
 * @returns the whole column
 */
export function joinNumbers(parts: readonly KeptNumbers[]): KeptNumbers {
  const whole = { ...NO_NUMBERS, pieces: parts.flatMap(({ pieces }) => pieces) };
  for (const { rows, there, low, high, largestStep, first, last } of parts) {
    whole.rows += rows;
    if (there === 0) continue;
    const across = whole.there > 0 ? Math.abs(first - whole.last) : 0;
    whole.largestStep = Math.max(whole.largestStep, largestStep, across);
    whole.low = Math.min(whole.low, low);
    whole.high = Math.max(whole.high, high);
    if (whole.there === 0) whole.first = first;
    whole.last = last;
    whole.there += there;
  }
  return whole;
}

/** A column without rows. */
export const NO_NUMBERS: Readonly<KeptNumbers> = {
  rows: 0,
  pieces: [],
  there: 0,
  low: Number.POSITIVE_INFINITY,
  high: Number.NEGATIVE_INFINITY,
  largestStep: 0,
  first: Number.NaN,
  last: Number.NaN,
};

/**
 * Numbers that are there in full.
 * @param values one a row, NaN where missing
 * @returns the same, as a column of one piece
 */
export function keptAsTheyAre(values: Float64Array): KeptNumbers {
  const column = { ...numberColumn(0), values };
  for (let row = 0; row < values.length; row += 1) countRow(column, row);
  return keepNumbers(column, values.length);
}

/**
 * Where the column stands still.
 * @param kept the column
 * @returns stretches of rows, rising
 */
export function longRuns(kept: KeptNumbers): { from: number; to: number }[] {
  return joinRuns(
    kept.pieces.map((piece) => ({
      equal: piece.equal,
      rows: piece.values.length,
      first: inPiece(piece, 0),
      last: inPiece(piece, piece.values.length - 1),
    })),
  );
}

function inPiece({ values, tens, gap }: NumberPiece, row: number): number {
  const value = values[row] ?? gap;
  return value === gap ? Number.NaN : value / tens;
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
  for (const { values, gap, tens } of kept.pieces) {
    widen(values, gap, tens, factor, offset, out, row);
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
  for (const piece of kept.pieces) {
    if (left < 0) break;
    if (left < piece.values.length) return inPiece(piece, left);
    left -= piece.values.length;
  }
  return Number.NaN;
}

/**
 * The numbers of some rows.
 * @param kept the column
 * @param rows rising, counts
 * @returns one a row, NaN where missing
 */
export function someNumbers(kept: KeptNumbers, rows: Int32Array): Float64Array {
  const out = new Float64Array(rows.length).fill(Number.NaN);
  let k = 0;
  let start = 0;
  for (const { values, tens, gap } of kept.pieces) {
    for (; k < rows.length; k += 1) {
      const row = (rows[k] ?? 0) - start;
      if (row >= values.length) break;
      const value = values[row] ?? gap;
      if (value !== gap) out[k] = value / tens;
    }
    start += values.length;
  }
  return out;
}
