/**
 * The fast way through clean rows: bytes to columns of numbers, every byte looked at about once. It decides nothing: a
 * row with a cell that is not plain is handed back, with where its cells stand, to the exact and slower way.
 */
import { CELL, parseClockCell } from './parse-clock.ts';
import { parsePlainNumber } from './parse-number.ts';

/** Columns as the fast way fills them. */
export interface RowArrays {
  /** one of CELL a column */
  kinds: Uint8Array;
  /** values, one array a column; of a date and time in one cell the packed date */
  first: Float64Array[];
  /** seconds of the day where one cell holds date and time; empty elsewhere */
  second: Float64Array[];
  /** rows the arrays hold, count */
  capacity: number;
}

/** Where the fast way stands, and the row it hands back. Kept from call to call, so that nothing is made anew a row. */
export interface RowCursor {
  /** row that comes next, count */
  row: number;
  /** line ends passed, count */
  lines: number;
  /** byte at which the row handed back starts, and the byte after its line end */
  lineStart: number;
  lineEnd: number;
  /** cells of the row handed back, count */
  cells: number;
  /** its odd cells: column, first byte, byte after the last, three numbers each */
  odd: Int32Array;
  oddCount: number;
}

const ZERO = 48;
const NEWLINE = 10 - ZERO;
const RETURN = 13 - ZERO;
const MINUS = 45 - ZERO;
/** A mantissa of more digits does not fit 32 bits. */
const MOST_DIGITS = 9;
/** No byte: the cell is not plain. */
const ODD = -1000;
const POWERS = Float64Array.from({ length: 23 }, (_, i) => 10 ** i);

/**
 * A cursor at the first row.
 * @param columns columns of the file, count
 * @returns the cursor
 */
export function rowCursor(columns: number): RowCursor {
  return { row: 0, lines: 0, lineStart: 0, lineEnd: 0, cells: 0, odd: new Int32Array(3 * columns + 3), oddCount: 0 };
}

/**
 * Read rows until one is not plain, the arrays are full or the bytes end.
 * @param bytes whole lines of the file, bytes
 * @param from first byte, count
 * @param to byte after the last, which ends a line, count
 * @param separator byte between cells, count
 * @param point byte of the decimal mark, count
 * @param columns arrays to fill, object
 * @param cursor where it stands, object; changed
 * @returns true when a row is handed back in the cursor
 */
export function parseRows(
  bytes: Uint8Array,
  from: number,
  to: number,
  separator: number,
  point: number,
  columns: RowArrays,
  cursor: RowCursor,
): boolean {
  const { kinds, first, capacity } = columns;
  const number: number = CELL.number;
  const width = kinds.length;
  const sep = separator - ZERO;
  const dot = point - ZERO;
  let row = cursor.row;
  let i = from;
  let lines = 0;
  while (i < to && row < capacity) {
    const lineStart = i;
    let c = 0;
    let stop = 0;
    cursor.oddCount = 0;
    do {
      const cellStart = i;
      if (kinds[c] === number) {
        let digit = (bytes[i] ?? 0) - ZERO;
        let negative = false;
        if (digit === MINUS) {
          negative = true;
          digit = (bytes[++i] ?? 0) - ZERO;
        }
        let mantissa = digit;
        let value = mantissa;
        if (digit >>> 0 < 10) {
          // Unrolled: most cells have up to four digits before the mark and two behind; the processor learns them.
          digit = (bytes[i + 1] ?? 0) - ZERO;
          if (digit >>> 0 < 10) {
            mantissa = (Math.imul(mantissa, 10) + digit) | 0;
            digit = (bytes[i + 2] ?? 0) - ZERO;
            if (digit >>> 0 < 10) {
              mantissa = (Math.imul(mantissa, 10) + digit) | 0;
              digit = (bytes[i + 3] ?? 0) - ZERO;
              if (digit >>> 0 < 10) {
                mantissa = (Math.imul(mantissa, 10) + digit) | 0;
                i += 4;
                digit = (bytes[i] ?? 0) - ZERO;
                if (digit >>> 0 < 10) {
                  do {
                    mantissa = (Math.imul(mantissa, 10) + digit) | 0;
                    digit = (bytes[++i] ?? 0) - ZERO;
                  } while (digit >>> 0 < 10);
                  // With two decimals more it may no longer fit.
                  if (i - cellStart > MOST_DIGITS - 2) digit = ODD;
                }
              } else i += 3;
            } else i += 2;
          } else i += 1;
          value = mantissa;
          if (digit === dot) {
            digit = (bytes[i + 1] ?? 0) - ZERO;
            if (digit >>> 0 < 10) {
              mantissa = (Math.imul(mantissa, 10) + digit) | 0;
              digit = (bytes[i + 2] ?? 0) - ZERO;
              if (digit >>> 0 < 10) {
                mantissa = (Math.imul(mantissa, 10) + digit) | 0;
                i += 3;
                digit = (bytes[i] ?? 0) - ZERO;
                if (digit >>> 0 < 10) {
                  let places = 2;
                  while (digit >>> 0 < 10) {
                    mantissa = (Math.imul(mantissa, 10) + digit) | 0;
                    digit = (bytes[++i] ?? 0) - ZERO;
                    places++;
                  }
                  value = mantissa / (POWERS[places] ?? Number.NaN);
                  if (i - cellStart > MOST_DIGITS + 1) digit = ODD;
                } else value = mantissa / 100;
              } else {
                i += 2;
                value = mantissa / 10;
              }
            } else i += 1;
          }
        } else digit = ODD;
        if (digit === sep || digit === NEWLINE || digit === RETURN) {
          const values = first[c];
          if (values) values[row] = negative ? -value : value;
          stop = digit + ZERO;
        } else {
          i = slowCell(bytes, cellStart, CELL.number, c, row, separator, point, columns, cursor);
          stop = bytes[i] ?? 0;
        }
      } else {
        i = slowCell(bytes, i, kinds[c] ?? CELL.beyond, c, row, separator, point, columns, cursor);
        stop = bytes[i] ?? 0;
      }
      c++;
      i++;
    } while (stop === separator);
    if (stop === 13 && i < to && (bytes[i] ?? 0) === 10) i++;
    lines++;
    if (c !== width || cursor.oddCount > 0) {
      cursor.row = row;
      cursor.lines += lines;
      cursor.lineStart = lineStart;
      cursor.lineEnd = i;
      cursor.cells = c;
      return true;
    }
    row++;
  }
  cursor.row = row;
  cursor.lines += lines;
  cursor.lineStart = i;
  cursor.lineEnd = i;
  return false;
}

/** A cell that is no short plain number: a time, a padded or long number, an empty cell; else it is noted as odd. */
function slowCell(
  bytes: Uint8Array,
  from: number,
  kind: number,
  c: number,
  row: number,
  separator: number,
  point: number,
  { first, second }: RowArrays,
  cursor: RowCursor,
): number {
  const values = first[c];
  if (values && (kind === CELL.time || kind === CELL.date || kind === CELL.dateTime)) {
    const length = parseClockCell(bytes, from, kind, row, values, second[c] ?? values);
    const next = bytes[from + length] ?? 0;
    if (length > 0 && (next === separator || next === 10 || next === 13)) return from + length;
  }
  let to = from;
  let byte = bytes[to] ?? 10;
  while (byte !== separator && byte !== 10 && byte !== 13) byte = bytes[++to] ?? 10;
  if (kind === CELL.skip) return to;
  if (values) values[row] = Number.NaN;
  const more = second[c];
  if (more && more.length > 0) more[row] = Number.NaN;
  if (to === from && kind !== CELL.beyond) return to;
  if (values && kind === CELL.number) {
    const value = parsePlainNumber(bytes, from, to, point);
    if (!Number.isNaN(value)) {
      values[row] = value;
      return to;
    }
  }
  const at = 3 * cursor.oddCount;
  if (at + 2 < cursor.odd.length) {
    cursor.odd[at] = c;
    cursor.odd[at + 1] = from;
    cursor.odd[at + 2] = to;
    cursor.oddCount++;
  }
  return to;
}
