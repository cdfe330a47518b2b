/**
 * Rows straight from bytes, a block at a time: the loops of the kernel take the plain numbers and stop at whatever they
 * do not know. Here it is settled what stopped them. A row that is not plainly one is handed back, whole.
 */
import { cellKernel } from '../kernel/cell-kernel.ts';
import { PLACE } from '../kernel/cells-text.ts';
import { type Decimal, isMissingMark, numberIn } from '../text/cell.ts';
import type { ColumnStore } from './column-store.ts';
import { countRow, makeFit, takeBlock, wholeOf } from './number-column.ts';
import { parsePlainNumber } from './parse-number.ts';
import { type RowStore, roomFor } from './row-store.ts';
import { endOf, lookAtSpans, type Pending, putSpans } from './span-cells.ts';

export interface BlockReader {
  /**
   * Read whole lines.
   * @returns the byte of the row that is handed back, or `to`; the rows taken stand in the store
   */
  read(bytes: Uint8Array, from: number, to: number): number;
  /** an empty byte stood among those read */
  metZero(): boolean;
}

/** Bytes looked at while they are near the processor; few at first behind a row that was handed back. */
const LARGEST_SLICE = 1 << 18;
const SMALLEST_SLICE = 1 << 13;
/** Cells of a block, and rows at most. */
const BLOCK_CELLS = 1 << 15;
const MOST_ROWS = 4096;
/** Bytes in front of and behind the cells of a column. */
const MARGIN = 16;
/** Line ends behind the bytes of a slice: the loops look at many bytes at once. */
const BEHIND = 64;
const NUMBER = 0;
const SPAN = 1;
const NEWLINE = 10;
const RETURN = 13;

/** What stopped the kernel, settled. */
type Settled = 'go on' | 'row' | 'fit';

/**
 * A reader of blocks.
 * @param store where the rows go, object
 * @param separator byte between cells, count
 * @param decimal decimal mark of the file, text
 * @param text gives the text of bytes, function
 * @returns the reader
 */
export function blockReader(
  store: RowStore,
  separator: number,
  decimal: Decimal,
  text: (bytes: Uint8Array) => string,
): BlockReader {
  const kernel = cellKernel();
  const { bytes: memory, words } = kernel;
  const point = decimal.charCodeAt(0);
  const marks = BigInt(point) * 0x0101010101010101n;
  const width = store.columns.length + store.unnamed;
  const most = Math.min(MOST_ROWS, Math.max(8, Math.floor(BLOCK_CELLS / width) & ~7));
  const stride = 4 * most + MARGIN;
  const lengths = new Int32Array(width).fill(3);
  let lineEnd = NEWLINE;
  let pair = 0;
  let slice = LARGEST_SLICE;

  const wordOf = (c: number) => (PLACE.columns >> 2) + 4 * c;
  const blockOf = (c: number) => (PLACE.block + MARGIN + c * stride) >> 2;
  const startsAt = PLACE.starts >> 2;

  /** The loops keep nothing between two calls, and columns change their ways. */
  const tellColumns = (): void => {
    for (let c = 0; c < width; c += 1) {
      const column = store.columns[c];
      const at = wordOf(c);
      words[at] = column && isPlain(column) ? NUMBER : SPAN;
      words[at + 1] = lengths[c] ?? 0;
      words[at + 2] = c === width - 1 ? lineEnd : separator;
      words[at + 3] = column?.numbers.places ?? 0;
    }
  };

  const keepLengths = (): void => {
    for (let c = 0; c < width; c += 1) lengths[c] = words[wordOf(c) + 1] ?? 0;
  };

  /** Take the first rows of the block, up to one that needs a judge. */
  const takeRows = (wanted: number): number => {
    let rows = wanted;
    const waiting: [ColumnStore, Pending][] = [];
    store.columns.forEach((column, c) => {
      if (isPlain(column) || rows === 0) return;
      const starts = words.subarray(blockOf(c), blockOf(c) + rows);
      const looked = lookAtSpans(column, { bytes: memory, starts, rows, separator, text, decimal }, store.rows);
      rows = looked.rows;
      waiting.push([column, looked.pending]);
    });
    if (rows === 0) return 0;
    for (const [column, pending] of waiting) {
      putSpans(column, pending, store.rows, rows, decimal);
      if (column.kind === 'number') for (let r = 0; r < rows; r += 1) countRow(column.numbers, store.rows + r);
    }
    store.columns.forEach((column, c) => {
      if (isPlain(column)) takeBlock(column.numbers, kernel, blockOf(c), rows, store.rows);
    });
    store.rows += rows;
    return rows;
  };

  /** One cell that the kernel did not know. */
  const settle = (at: number, row: number, c: number): Settled => {
    const column = store.columns[c];
    const isLast = c === width - 1;
    const end = endOf(memory, at, separator);
    const byte = memory[end] ?? NEWLINE;
    if (isLast === (byte === separator)) return 'row';
    const word = wordOf(c);
    let changed = words[word + 1] !== end - at;
    words[word + 1] = end - at;
    if (isLast) {
      const two = byte === RETURN && memory[end + 1] === NEWLINE ? 1 : 0;
      if (byte !== lineEnd || two !== pair) changed = true;
      lineEnd = byte;
      pair = two;
      words[word + 2] = byte;
    }
    if (changed) return 'go on';
    if (!column || !isPlain(column)) return 'row';
    let value = parsePlainNumber(memory, at, end, point);
    if (Number.isNaN(value)) {
      const cell = text(memory.subarray(at, end));
      value = numberIn(cell, decimal);
      if (Number.isNaN(value) && !isMissingMark(cell)) return 'row';
    }
    const whole = wholeOf(value, column.numbers.places);
    if (Number.isNaN(whole)) {
      unfit = value;
      return 'fit';
    }
    words[blockOf(c) + row] = whole;
    settledTo = end + 1;
    return 'go on';
  };
  let unfit = Number.NaN;
  let settledTo = 0;
  let zero = false;

  /** Rows of the memory from a byte on to another; the byte of the row handed back, or `to`. */
  const readMemory = (from: number, to: number): number => {
    let at = from;
    while (at < to) {
      const room = roomFor(store, most);
      if (room === 0) return to;
      let row = 0;
      let c = 0;
      words[startsAt] = at;
      let settled: Settled = 'go on';
      while (at < to && row < room && settled === 'go on') {
        at = kernel.cells(at, to, row, room, c, width, stride, separator, pair, marks);
        row = words[PLACE.stopped >> 2] ?? 0;
        c = words[(PLACE.stopped >> 2) + 1] ?? 0;
        if (at >= to || row >= room) break;
        settledTo = 0;
        settled = settle(at, row, c);
        if (settledTo === 0) continue;
        at = settledTo;
        c += 1;
        if (c < width) continue;
        c = 0;
        row += 1;
        at += pair;
        words[startsAt + row] = at;
      }
      const taken = takeRows(row);
      at = words[startsAt + taken] ?? to;
      if (taken < row || settled === 'row') return at;
      const column = store.columns[c];
      if (settled === 'fit' && column) {
        makeFit(column.numbers, store.rows, unfit);
        keepLengths();
        tellColumns();
      }
    }
    return to;
  };

  return {
    metZero: () => zero,
    read(bytes, from, to) {
      let at = from;
      tellColumns();
      while (at < to && !store.full) {
        const cut = sliceEnd(bytes, at, Math.min(to, at + slice), to);
        if (cut === at) break;
        memory.set(bytes.subarray(at, cut), PLACE.bytes);
        memory.fill(NEWLINE, PLACE.bytes + cut - at, PLACE.bytes + cut - at + BEHIND);
        const size = cut - at;
        if (kernel.zeros(PLACE.bytes, PLACE.bytes + size) === 1) zero = true;
        const read = readMemory(PLACE.bytes, PLACE.bytes + size) - PLACE.bytes;
        at += read;
        slice = read < size ? SMALLEST_SLICE : Math.min(LARGEST_SLICE, 2 * slice);
        if (read < size) break;
      }
      keepLengths();
      return store.full ? to : at;
    },
  };
}

/** A column whose cells the kernel reads itself. */
function isPlain({ kind, undecided, suffix, numbers }: ColumnStore): boolean {
  return kind === 'number' && !undecided && suffix === '' && !(numbers.values instanceof Float64Array);
}

/** The byte after the last line end of a slice; the start of it where a line is longer than that. */
function sliceEnd(bytes: Uint8Array, from: number, end: number, to: number): number {
  if (end === to) return to;
  const newline = bytes.lastIndexOf(NEWLINE, end - 1) + 1;
  if (newline > from) return newline;
  // Lines that end with a return alone; one before a newline is half of a pair.
  const single = bytes.lastIndexOf(RETURN, end - 2) + 1;
  return single > from && bytes[single] !== NEWLINE ? single : from;
}
