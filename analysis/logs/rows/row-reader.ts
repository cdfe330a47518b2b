/**
 * Rows of readings into columns. Clean rows go through the byte parser; a piece with a quote in it goes through
 * papaparse; fixed columns and runs of blanks through the head's own splitter. Nothing is dropped without a count.
 */
import Papa from 'papaparse';
import { readClockCell } from '../clock/clock-cell.ts';
import { degreesIn, isMissingMark, splitUnit, stateIn } from '../text/cell.ts';
import { textOf } from '../text/encoding.ts';
import type { Layout } from '../text/layout.ts';
import { splitLine } from '../text/split-line.ts';
import { CUT_MARK } from '../text/zero-bytes.ts';
import { type ColumnStore, putCell } from './column-store.ts';
import { judgeRow } from './judge-row.ts';
import { lastLine } from './last-line.ts';
import { parseRows, type RowCursor, rowCursor } from './parse-rows.ts';
import { makeRoom, type RowStore, takeArrays } from './row-store.ts';

const NEWLINE = 10;
const RETURN = 13;
const QUOTE = 34;
/** A quoted cell longer than this was never closed. */
const LONGEST_QUOTED = 1 << 20;

export interface RowReader {
  /** Whole lines, or the rest of the file when `last`. Gives the count of bytes taken; the rest must come again. */
  take(bytes: Uint8Array, last: boolean): number;
}

/**
 * A reader of rows.
 * @param layout how the file is built, object
 * @param store where the rows go, object
 * @param options `exact` sends every piece through papaparse, so that both ways can be compared
 * @returns the reader
 */
export function rowReader(layout: Layout, store: RowStore, options: { exact?: boolean } = {}): RowReader {
  const text = textOf(layout.encoding);
  const { delimiter, decimal } = layout;
  const isParted = delimiter !== 'spaces' && delimiter !== 'fixed';
  const bytewise = isParted && delimiter !== decimal && options.exact !== true;
  const cursor = rowCursor(store.arrays.kinds.length);
  let line = 0;

  /** The byte at which a row with a quoted cell starts, or the end. */
  const takeClean = (bytes: Uint8Array, from: number, to: number): number => {
    let at = from;
    while (at < to) {
      if (!makeRoom(store)) return to;
      cursor.row = store.rows;
      cursor.lines = 0;
      const handedBack = parseRows(bytes, at, to, delimiter.charCodeAt(0), decimal.charCodeAt(0), store.arrays, cursor);
      line += cursor.lines;
      store.rows = cursor.row;
      at = cursor.lineEnd;
      if (!handedBack) continue;
      if (hasQuotedCell(bytes, cursor)) {
        line -= 1;
        return cursor.lineStart;
      }
      if (!putOdd(bytes, cursor)) judge(bytes.subarray(cursor.lineStart, lineEnd(bytes, cursor)));
    }
    return to;
  };

  /** A row of full width whose odd cells are all readings of some kind is put at once; any other line is judged. */
  const putOdd = (bytes: Uint8Array, { cells, odd, oddCount, row }: RowCursor): boolean => {
    if (cells !== store.arrays.kinds.length || oddCount === 0) return false;
    const texts: string[] = [];
    for (let k = 0; k < oddCount; k++) {
      const column = store.columns[odd[3 * k] ?? -1];
      const cell = text(bytes.subarray(odd[3 * k + 1], odd[3 * k + 2]));
      if (!column || cell.endsWith(CUT_MARK) || !isFine(column, cell)) return false;
      texts.push(cell);
    }
    texts.forEach((cell, k) => {
      const column = store.columns[odd[3 * k] ?? -1];
      if (column) putCell(column, row, cell, decimal);
    });
    store.rows += 1;
    return true;
  };

  const put = (cells: string[]): void => {
    const end = cells.at(-1) ?? '';
    if (end.endsWith(CUT_MARK)) lastLine(store, layout, [...cells.slice(0, -1), end.slice(0, -1)], line);
    else judgeRow(store, layout, cells, line);
  };

  const judge = (bytes: Uint8Array): void => put(splitLine(text(bytes), delimiter, layout.cuts));

  const takeLines = (bytes: Uint8Array): void => {
    const piece = text(bytes);
    for (const one of piece.split(/\r\n|\n|\r/).slice(0, -1)) {
      line += 1;
      if (line >= layout.firstRowLine && one.trim() !== '' && makeRoom(store)) {
        put(splitLine(one, delimiter, layout.cuts));
      }
    }
  };

  const takeQuoted = (bytes: Uint8Array): void => {
    const piece = text(bytes).replace(/\r\n?/g, '\n');
    const { data } = Papa.parse<string[]>(piece, { delimiter, newline: '\n', quoteChar: '"' });
    data.pop();
    for (const cells of data) {
      line += 1;
      if (line >= layout.firstRowLine && makeRoom(store)) put(cells);
      for (const cell of cells) if (cell.includes('\n')) line += cell.split('\n').length - 1;
    }
    takeArrays(store);
  };

  /** Lines above the first row are passed over. */
  const skipHead = (bytes: Uint8Array): number => {
    let at = 0;
    while (line < layout.firstRowLine - 1 && at < bytes.length) {
      const byte = bytes[at++];
      if (byte === NEWLINE || (byte === RETURN && bytes[at] !== NEWLINE)) line += 1;
    }
    return at;
  };

  return {
    take(bytes, last) {
      let from = skipHead(bytes);
      let end = lastLineEnd(bytes, last);
      if (bytewise) from = takeClean(bytes, from, end);
      if (!isParted) takeLines(bytes.subarray(from, end));
      else if (from < end) {
        const quoted = lastRowEnd(bytes, from, end, delimiter.charCodeAt(0), last);
        end = quoted.end;
        if (quoted.neverClosed) takeLines(bytes.subarray(from, end));
        else if (end > from) takeQuoted(bytes.subarray(from, end));
      }
      if (!last || end >= bytes.length) return end;
      line += 1;
      if (line >= layout.firstRowLine && makeRoom(store)) {
        const cells = splitLine(text(bytes.subarray(end)), delimiter, layout.cuts);
        lastLine(store, layout, cells, line);
      }
      return bytes.length;
    },
  };
}

/** A cell that its column takes without a doubt about the whole row. */
function isFine(column: ColumnStore, cell: string): boolean {
  if (column.undecided) return false;
  if (column.kind === 'text') return !cell.includes('#');
  if (isMissingMark(cell)) return true;
  if (column.kind === 'state') return !Number.isNaN(stateIn(cell));
  if (column.kind === 'degrees') return !Number.isNaN(degreesIn(cell));
  if (column.kind === 'time' || column.kind === 'date' || column.kind === 'date-time')
    return readClockCell(cell) !== null;
  return column.kind === 'number' && column.suffix !== '' && splitUnit(cell)?.unit === column.suffix;
}

function lineEnd(bytes: Uint8Array, { lineStart, lineEnd: end }: RowCursor): number {
  let to = end;
  while (to > lineStart && (bytes[to - 1] === NEWLINE || bytes[to - 1] === RETURN)) to--;
  return to;
}

/** The byte after the last line end; a return at the very end of a piece may be half of a pair. */
function lastLineEnd(bytes: Uint8Array, last: boolean): number {
  const newline = bytes.lastIndexOf(NEWLINE);
  return newline >= 0 ? newline + 1 : bytes.lastIndexOf(RETURN, bytes.length - (last ? 1 : 2)) + 1;
}

/** The byte after the last line end that stands in no quoted cell. */
function lastRowEnd(
  bytes: Uint8Array,
  from: number,
  to: number,
  separator: number,
  last: boolean,
): { end: number; neverClosed: boolean } {
  let inQuotes = false;
  let cellStart = true;
  let end = from;
  let opened = from;
  for (let i = from; i < to; i++) {
    const byte = bytes[i];
    if (byte === QUOTE && (inQuotes || cellStart)) {
      inQuotes = !inQuotes;
      opened = i;
      cellStart = false;
    } else if (!inQuotes && (byte === NEWLINE || byte === RETURN)) {
      end = i + 1;
      cellStart = true;
    } else cellStart = byte === separator;
  }
  // Never closed: then it opened nothing, and the lines are lines.
  const neverClosed = inQuotes && (last || to - opened > LONGEST_QUOTED);
  return neverClosed ? { end: to, neverClosed } : { end, neverClosed };
}

/** True where one of the odd cells of a row handed back is a quoted one. */
function hasQuotedCell(bytes: Uint8Array, { odd, oddCount, lineStart, lineEnd: end, cells }: RowCursor): boolean {
  for (let k = 0; k < oddCount; k++) if (bytes[odd[3 * k + 1] ?? 0] === QUOTE) return true;
  // Of a row with too many cells not all are noted.
  return 3 * cells > odd.length && bytes.subarray(lineStart, end).indexOf(QUOTE) >= 0;
}
