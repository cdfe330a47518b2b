/**
 * The fast way through clean rows: bytes to columns of numbers, every byte looked at about once. It decides nothing:
 * a row with any cell that is not plain is handed back, with where its cells stand, to the exact and slower way.
 */

/** What a column holds, as the fast way must know it. */
export const CELL = { number: 0, time: 1, date: 2, dateTime: 3, other: 4 } as const;

/** Where the fast way stopped, and what it met there. Kept from call to call, so that nothing is made anew a row. */
export interface RowCursor {
  /** row that comes next, count */
  row: number;
  /** byte at which the row handed back starts, and the byte after its line end */
  lineStart: number;
  lineEnd: number;
  /** line ends passed, of rows read and of the one handed back, count */
  lines: number;
  /** cells of the row handed back */
  cells: number;
  /** odd cells of the row handed back: column, first byte, byte after the last, three numbers each */
  odd: Int32Array;
  oddCount: number;
}

/** Columns as the fast way fills them. */
export interface RowColumns {
  /** one of CELL a column */
  kinds: Uint8Array;
  /** values, one array a column; for a date and time in one cell the packed date */
  first: Float64Array[];
  /** seconds of the day where a cell holds date and time; empty elsewhere */
  second: Float64Array[];
  /** rows the arrays hold */
  capacity: number;
}

const POWERS = Float64Array.from({ length: 23 }, (_, i) => 10 ** i);
const ZERO = 48;
const NEWLINE = 10 - ZERO;
const RETURN = 13 - ZERO;
const MINUS = 45 - ZERO;
const MOST_DIGITS = 9;

/**
 * A cursor for a number of columns.
 * @param columns columns of the file, count
 * @returns a cursor at the first row
 */
export function rowCursor(columns: number): RowCursor {
  return { row: 0, lineStart: 0, lineEnd: 0, lines: 0, cells: 0, odd: new Int32Array(3 * columns + 3), oddCount: 0 };
}

/**
 * Read rows until one is not plain or the bytes end.
 * @param bytes whole lines of the file, bytes
 * @param from first byte, count
 * @param to byte after the last, count; the byte before it ends a line
 * @param separator byte between cells, count
 * @param point byte of the decimal mark, count
 * @param columns arrays to fill
 * @param cursor where it stands; changed
 * @returns true when a row is handed back in the cursor, false when the bytes are read or the arrays are full
 */
export function parseRows(
  bytes: Uint8Array,
  from: number,
  to: number,
  separator: number,
  point: number,
  columns: RowColumns,
  cursor: RowCursor,
): boolean {
  const { kinds, first, second, capacity } = columns;
  const width = kinds.length;
  const sep = separator - ZERO;
  const dot = point - ZERO;
  const odd = cursor.odd;
  let { row } = cursor;
  let i = from;
  let lines = 0;
  while (i < to && row < capacity) {
    const lineStart = i;
    let c = 0;
    let oddCount = 0;
    let end = 0;
    for (;;) {
      const cellStart = i;
      const kind = c < width ? (kinds[c] ?? CELL.other) : CELL.other;
      let plain = false;
      if (kind === CELL.number) {
        let negative = false;
        let digit = (bytes[i] ?? 0) - ZERO;
        if (digit === MINUS) {
          negative = true;
          digit = (bytes[++i] ?? 0) - ZERO;
        }
        let mantissa = digit;
        let decimals = 0;
        let digits = 1;
        if (digit >>> 0 < 10) {
          // Unrolled: most cells have one to four digits before the mark, and the processor learns their pattern.
          digit = (bytes[i + 1] ?? 0) - ZERO;
          if (digit >>> 0 < 10) {
            mantissa = (Math.imul(mantissa, 10) + digit) | 0;
            digit = (bytes[i + 2] ?? 0) - ZERO;
            if (digit >>> 0 < 10) {
              mantissa = (Math.imul(mantissa, 10) + digit) | 0;
              digit = (bytes[i + 3] ?? 0) - ZERO;
              if (digit >>> 0 < 10) {
                mantissa = (Math.imul(mantissa, 10) + digit) | 0;
                digit = (bytes[i + 4] ?? 0) - ZERO;
                digits = 4;
                i += 4;
                while (digit >>> 0 < 10) {
                  mantissa = (Math.imul(mantissa, 10) + digit) | 0;
                  digit = (bytes[++i] ?? 0) - ZERO;
                  digits++;
                }
              } else {
                digits = 3;
                i += 3;
              }
            } else {
              digits = 2;
              i += 2;
            }
          } else i += 1;
          if (digit === dot) {
            digit = (bytes[i + 1] ?? 0) - ZERO;
            if (digit >>> 0 < 10) {
              mantissa = (Math.imul(mantissa, 10) + digit) | 0;
              digit = (bytes[i + 2] ?? 0) - ZERO;
              if (digit >>> 0 < 10) {
                mantissa = (Math.imul(mantissa, 10) + digit) | 0;
                digit = (bytes[i + 3] ?? 0) - ZERO;
                decimals = 2;
                i += 3;
                while (digit >>> 0 < 10) {
                  mantissa = (Math.imul(mantissa, 10) + digit) | 0;
                  digit = (bytes[++i] ?? 0) - ZERO;
                  decimals++;
                }
              } else {
                decimals = 1;
                i += 2;
              }
            } else i += 1;
          }
          if (digit === sep || digit === NEWLINE || digit === RETURN) {
            const values = first[c];
            if (digits + decimals <= MOST_DIGITS && values) {
              plain = true;
              const value = mantissa / (POWERS[decimals] ?? 1);
              values[row] = negative ? -value : value;
            }
          }
        }
      } else if (kind !== CELL.other) {
        const values = first[c];
        const length = values ? parseClock(bytes, i, kind, row, values, second[c]) : 0;
        if (length > 0) {
          i += length;
          const next = (bytes[i] ?? 0) - ZERO;
          plain = next === sep || next === NEWLINE || next === RETURN;
        }
      }
      if (!plain) {
        i = cellStart;
        let letter = (bytes[i] ?? 0) - ZERO;
        while (i < to && letter !== sep && letter !== NEWLINE && letter !== RETURN) letter = (bytes[++i] ?? 0) - ZERO;
        if (i === cellStart && kind === CELL.number) {
          const values = first[c];
          if (values) values[row] = Number.NaN;
        } else if (c < width) {
          const at = 3 * oddCount;
          odd[at] = c;
          odd[at + 1] = cellStart;
          odd[at + 2] = i;
          oddCount++;
        }
      }
      c++;
      const stop = bytes[i] ?? 0;
      i++;
      if (stop === separator) continue;
      end = i - 1;
      if (stop === 13 && bytes[i] === 10) i++;
      break;
    }
    lines++;
    if (c !== width || oddCount > 0) {
      cursor.row = row;
      cursor.lineStart = lineStart;
      cursor.lineEnd = i;
      cursor.lines += lines;
      cursor.cells = end === lineStart ? 0 : c;
      cursor.oddCount = oddCount;
      return true;
    }
    row++;
  }
  cursor.row = row;
  cursor.lineStart = i;
  cursor.lineEnd = i;
  cursor.lines += lines;
  return false;
}

/** `hh:mm:ss.f`, `yyyy-mm-dd`, `dd/mm/yyyy` or both; the count of bytes read, or 0 when it is anything else. */
function parseClock(
  bytes: Uint8Array,
  from: number,
  kind: number,
  row: number,
  first: Float64Array,
  second: Float64Array | undefined,
): number {
  let i = from;
  if (kind !== CELL.time) {
    const length = parseDate(bytes, i, row, first);
    if (length === 0 || kind === CELL.date) return length;
    i += length;
    const between = bytes[i];
    if (between !== 32 && between !== 84) return 0;
    i++;
    if (!second) return 0;
    const rest = parseTime(bytes, i, row, second);
    return rest === 0 ? 0 : i + rest - from;
  }
  return parseTime(bytes, i, row, first);
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
  let i = from + 8;
  const mark = bytes[i];
  if (mark !== 46 && mark !== 44) {
    into[row] = whole;
    return 8;
  }
  let mantissa = 0;
  let places = 0;
  let digit = (bytes[++i] ?? 0) - ZERO;
  while (digit >>> 0 < 10) {
    mantissa = (Math.imul(mantissa, 10) + digit) | 0;
    places++;
    digit = (bytes[++i] ?? 0) - ZERO;
  }
  // A comma with no digits behind it, or with a whole cell behind it, is the separator.
  if (places === 0 || places > MOST_DIGITS || mark === 44) return mark === 44 ? timeBefore(whole, row, into) : 0;
  into[row] = whole + mantissa / (POWERS[places] ?? 1);
  return i - from;
}

function timeBefore(whole: number, row: number, into: Float64Array): number {
  into[row] = whole;
  return 8;
}

function parseDate(bytes: Uint8Array, from: number, row: number, into: Float64Array): number {
  const a = twoDigits(bytes, from);
  const second = twoDigits(bytes, from + 2);
  if (a < 0) return 0;
  if (second >= 0) {
    const mark = bytes[from + 4];
    const b = twoDigits(bytes, from + 5);
    const c = twoDigits(bytes, from + 8);
    if ((mark !== 45 && mark !== 47 && mark !== 46) || bytes[from + 7] !== mark || b < 0 || c < 0) return 0;
    into[row] = (a * 100 + second) * 1e8 + b * 1e4 + c;
    return 10;
  }
  const mark = bytes[from + 2];
  const b = twoDigits(bytes, from + 3);
  const century = twoDigits(bytes, from + 6);
  const year = twoDigits(bytes, from + 8);
  if ((mark !== 45 && mark !== 47 && mark !== 46) || bytes[from + 5] !== mark || b < 0 || century < 0 || year < 0)
    return 0;
  into[row] = a * 1e8 + b * 1e4 + century * 100 + year;
  return 10;
}
