/** Cells of a block that are no plain numbers: clocks, texts, states, positions, numbers with a unit. Column by column. */
import { readClockCell } from '../clock/clock-cell.ts';
import { type Decimal, degreesIn, isMissingMark, numberIn, splitUnit, stateIn } from '../text/cell.ts';
import { CUT_MARK } from '../text/zero-bytes.ts';
import { type ColumnStore, putCell } from './column-store.ts';
import { parseClockCell } from './parse-clock.ts';
import { parsePlainNumber } from './parse-number.ts';

/** Where the cells of one column of a block stand. */
export interface CellSpans {
  bytes: Uint8Array;
  /** first byte of each */
  starts: Int32Array;
  /** rows of the block, count */
  rows: number;
  separator: number;
  text(bytes: Uint8Array): string;
  decimal: Decimal;
}

/** Cells to be put once it is known how many rows are taken. */
export type Pending = { row: number; cell: string }[];

/**
 * Look at the cells of a column. Dates and times in their usual forms are put at once: a row that comes to nothing is
 * put over.
 * @param column the column
 * @param spans its cells
 * @param row row of the file that the first one becomes, count
 * @returns rows up to the first cell that needs a judge, and the cells left to put
 */
export function lookAtSpans(column: ColumnStore, spans: CellSpans, row: number): { rows: number; pending: Pending } {
  const { bytes, starts, rows, separator, text } = spans;
  const pending: Pending = [];
  const isClock = column.kind === 'time' || column.kind === 'date' || column.kind === 'date-time';
  // Long numbers are put at once as well.
  const isWide = column.kind === 'number' && !column.undecided && column.suffix === '';
  const wide = isWide && column.numbers.values instanceof Float64Array ? column.numbers.values : null;
  const point = spans.decimal.charCodeAt(0);
  let before = 0;
  let length = -1;
  let known = '';
  for (let r = 0; r < rows; r += 1) {
    const from = starts[r] ?? 0;
    if (isClock && putClock(column, bytes, from, separator, row + r)) continue;
    const to = endOf(bytes, from, separator);
    if (wide) {
      const value = parsePlainNumber(bytes, from, to, point);
      wide[row + r] = value;
      if (!Number.isNaN(value) || to === from) continue;
    }
    if (to - from !== length || !areSame(bytes, before, from, length)) {
      known = text(bytes.subarray(from, to));
      if (known !== '' && !isFine(column, known, spans.decimal)) return { rows: r, pending };
      length = to - from;
    }
    before = from;
    pending.push({ row: r, cell: known });
  }
  return { rows, pending };
}

/**
 * Put the cells that were looked at.
 * @param column the column; changed
 * @param pending from lookAtSpans
 * @param row row of the file that the first of the block becomes, count
 * @param rows rows of the block that are taken, count
 * @param decimal decimal mark of the file, text
 */
export function putSpans(column: ColumnStore, pending: Pending, row: number, rows: number, decimal: Decimal): void {
  let before = '';
  let at = -1;
  for (const one of pending) {
    if (one.row >= rows) return;
    // Nearly every state, and every date, is the one of the row above.
    if (at >= 0 && one.cell === before) repeatCell(column, row + at, row + one.row);
    else {
      const { formulas } = column;
      putCell(column, row + one.row, one.cell, decimal);
      before = one.cell;
      at = column.formulas === formulas && column.kind !== 'number' ? one.row : -1;
    }
  }
}

function repeatCell({ first, second, offsets }: ColumnStore, from: number, to: number): void {
  first[to] = first[from] ?? Number.NaN;
  if (second.length > 0) second[to] = second[from] ?? Number.NaN;
  if (offsets) offsets[to] = offsets[from] ?? Number.NaN;
}

function putClock(column: ColumnStore, bytes: Uint8Array, from: number, separator: number, row: number): boolean {
  const length = parseClockCell(bytes, from, separator, column, row);
  if (length < 0) return false;
  if (length > 0 && column.clockExample === '')
    column.clockExample = String.fromCharCode(...bytes.subarray(from, from + length));
  return true;
}

/**
 * The byte after a cell.
 * @param bytes of the file, a line end among them
 * @param from first byte of the cell, count
 * @param separator byte between cells, count
 * @returns place of the separator or line end, count
 */
export function endOf(bytes: Uint8Array, from: number, separator: number): number {
  let to = from;
  let byte = bytes[to] ?? 10;
  while (byte !== separator && byte !== 10 && byte !== 13) byte = bytes[++to] ?? 10;
  return to;
}

function areSame(bytes: Uint8Array, a: number, b: number, length: number): boolean {
  for (let i = 0; i < length; i += 1) if (bytes[a + i] !== bytes[b + i]) return false;
  return true;
}

/** A cell that its column takes without a doubt about the whole row. */
function isFine(column: ColumnStore, cell: string, decimal: Decimal): boolean {
  if (cell.endsWith(CUT_MARK) || cell.charCodeAt(0) === QUOTE) return false;
  if (column.undecided) return isMissingMark(cell);
  if (column.kind === 'text') return !cell.includes('#');
  if (isMissingMark(cell)) return true;
  if (column.kind === 'state') return !Number.isNaN(stateIn(cell));
  if (column.kind === 'degrees') return !Number.isNaN(degreesIn(cell));
  if (column.kind === 'number') {
    return !Number.isNaN(numberIn(cell, decimal)) || (column.suffix !== '' && splitUnit(cell)?.unit === column.suffix);
  }
  return readClockCell(cell) !== null;
}

const QUOTE = 34;
