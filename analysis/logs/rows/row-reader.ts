/**
 * Rows of readings into columns. Clean rows go through the block reader; a piece with a quote in it goes through
 * papaparse; fixed columns and runs of blanks through the head's own splitter. Nothing is dropped without a count.
 */
import { textOf } from '../text/encoding.ts';
import type { Layout } from '../text/layout.ts';
import { splitLine } from '../text/split-line.ts';
import { CUT_MARK } from '../text/zero-bytes.ts';
import { blockReader } from './block-reader.ts';
import { judgeRow } from './judge-row.ts';
import { lastLine } from './last-line.ts';
import { quotedRecords } from './quoted-records.ts';
import { type RowStore, roomFor } from './row-store.ts';
import { endOf } from './span-cells.ts';

const NEWLINE = 10;
const RETURN = 13;
const QUOTE = 34;
/** A quoted cell longer than this was never closed. */
const LONGEST_QUOTED = 1 << 20;

export interface RowReader {
  /** Whole lines, or the rest of the file when `last`. Gives the count of bytes taken; the rest must come again. */
  take(bytes: Uint8Array, last: boolean): number;
  /** lines passed, count */
  lines(): number;
  /**
   * What was met in a piece can be judged only by what stands before it: a quoted cell, which may span lines, a block of
   * empty bytes, a line that is no plain row before the first that is.
   */
  unsure(): boolean;
}

export interface RowReaderOptions {
  /** sends every piece through papaparse, so that both ways can be compared */
  exact?: boolean;
  /** a piece that is read apart from what stands before it; lines count from its own first */
  apart?: 'first' | 'later';
}

/**
 * A reader of rows.
 * @param layout how the file is built, object
 * @param store where the rows go, object
 * @param options ways of reading, object
 * @returns the reader
 */
export function rowReader(layout: Layout, store: RowStore, options: RowReaderOptions = {}): RowReader {
  const text = textOf(layout.encoding);
  const { delimiter, decimal } = layout;
  const isParted = delimiter !== 'spaces' && delimiter !== 'fixed';
  const bytewise = isParted && delimiter !== decimal && options.exact !== true;
  const separator = delimiter.charCodeAt(0);
  const blocks = bytewise ? blockReader(store, separator, decimal, text) : null;
  const firstRowLine = options.apart === 'later' ? 1 : layout.firstRowLine;
  let line = 0;
  let unsure = false;

  /** The byte at which a row with a quoted cell starts, or the end. */
  const takeClean = (bytes: Uint8Array, from: number, to: number): number => {
    let at = from;
    while (blocks && at < to && !store.full) {
      const before = store.rows;
      at = blocks.read(bytes, at, to);
      line += store.rows - before;
      if (at >= to || store.full) break;
      const end = lineEnd(bytes, at, to);
      if (hasQuotedCell(bytes, at, end, separator)) return at;
      if (options.apart === 'later' && store.rows === 0) unsure = true;
      line += 1;
      if (roomFor(store, 1) === 0) break;
      put(splitLine(text(bytes.subarray(at, end)), delimiter, layout.cuts));
      at = end + (bytes[end] === RETURN && bytes[end + 1] === NEWLINE ? 2 : 1);
    }
    return to;
  };

  const put = (cells: string[]): void => {
    const end = cells.at(-1) ?? '';
    if (end.endsWith(CUT_MARK)) lastLine(store, layout, [...cells.slice(0, -1), end.slice(0, -1)], line);
    else judgeRow(store, layout, cells, line);
  };

  const takeLines = (bytes: Uint8Array): void => {
    const piece = text(bytes);
    for (const one of piece.split(/\r\n|\n|\r/).slice(0, -1)) {
      line += 1;
      if (line >= firstRowLine && one.trim() !== '' && roomFor(store, 1) > 0) {
        put(splitLine(one, delimiter, layout.cuts));
      }
    }
  };

  const takeQuoted = (bytes: Uint8Array): void => {
    const piece = text(bytes).replace(/\r\n?/g, '\n');
    for (const { cells, lines } of quotedRecords(piece, delimiter)) {
      line += 1;
      if (line >= firstRowLine && roomFor(store, 1) > 0) put(cells);
      line += lines - 1;
    }
  };

  /** Lines above the first row are passed over. */
  const skipHead = (bytes: Uint8Array): number => {
    let at = 0;
    while (line < firstRowLine - 1 && at < bytes.length) {
      const byte = bytes[at++];
      if (byte === NEWLINE || (byte === RETURN && bytes[at] !== NEWLINE)) line += 1;
    }
    return at;
  };

  return {
    lines: () => line,
    unsure: () => unsure || blocks?.metZero() === true,
    take(bytes, last) {
      let from = skipHead(bytes);
      let end = lastLineEnd(bytes, last);
      if (bytewise) from = takeClean(bytes, from, end);
      if (options.apart && from < end) {
        unsure = true;
        return bytes.length;
      }
      if (!isParted) takeLines(bytes.subarray(from, end));
      else if (from < end) {
        const whole = lastRowEnd(bytes, from, end, separator, last);
        end = whole.end;
        if (whole.neverClosed) takeLines(bytes.subarray(from, end));
        else if (end > from) takeQuoted(bytes.subarray(from, end));
      }
      if (!last || end >= bytes.length) return end;
      line += 1;
      if (line >= firstRowLine && roomFor(store, 1) > 0) {
        const cells = splitLine(text(bytes.subarray(end)), delimiter, layout.cuts);
        lastLine(store, layout, cells, line);
      }
      return bytes.length;
    },
  };
}

/** The first byte of the end of a line. */
function lineEnd(bytes: Uint8Array, from: number, to: number): number {
  let end = from;
  while (end < to && bytes[end] !== NEWLINE && bytes[end] !== RETURN) end += 1;
  return end;
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

/** True where a cell of a row starts with a quote. */
function hasQuotedCell(bytes: Uint8Array, from: number, to: number, separator: number): boolean {
  for (let at = from; at < to; at = endOf(bytes, at, separator) + 1) if (bytes[at] === QUOTE) return true;
  return false;
}
