/**
 * Rows of readings into columns. Clean stretches go through the byte parser; a piece with a quote goes through
 * papaparse, fixed columns and runs of blanks through the head's own splitter. Nothing is dropped without a count.
 */
import Papa from 'papaparse';
import type { RejectedRow } from '../read-outcome.ts';
import { cellKind, isReading } from '../text/cell-kind.ts';
import { textOf } from '../text/encoding.ts';
import type { Layout } from '../text/layout.ts';
import { splitLine } from '../text/split-line.ts';
import type { ColumnStore } from './column-store.ts';
import { parsePlainNumber } from './parse-number.ts';

const NEWLINE = 10;
const RETURN = 13;
const QUOTE = 34;
const MOST_REJECTED = 1000;

export interface RowCounts {
  rows: number;
  rejected: RejectedRow[];
  rejectedCount: number;
  ragged: number;
  firstRaggedLine: number;
  /** rows before which a repeated header stood */
  breaks: number[];
  repeatedHeaders: number;
  truncated: boolean;
}

export class RowReader {
  readonly counts: RowCounts = {
    rows: 0,
    rejected: [],
    rejectedCount: 0,
    ragged: 0,
    firstRaggedLine: 0,
    breaks: [],
    repeatedHeaders: 0,
    truncated: false,
  };
  readonly #layout: Layout;
  readonly #columns: readonly ColumnStore[];
  readonly #text: (bytes: Uint8Array) => string;
  readonly #separator: number;
  readonly #point: number;
  readonly #bytewise: boolean;
  #line = 0;
  #starts = new Int32Array(64);

  constructor(layout: Layout, columns: readonly ColumnStore[]) {
    this.#layout = layout;
    this.#columns = columns;
    this.#text = textOf(layout.encoding);
    this.#separator = layout.delimiter.length === 1 ? layout.delimiter.charCodeAt(0) : -1;
    this.#point = layout.decimal.charCodeAt(0);
    this.#bytewise = layout.delimiter !== 'spaces' && layout.delimiter !== 'fixed';
    this.#starts = new Int32Array(columns.length + 4);
  }

  /** Whole lines; `last` when the file ends here, then the last line may lack its end. */
  take(bytes: Uint8Array, last: boolean): void {
    const quoted = this.#bytewise && bytes.indexOf(QUOTE) >= 0;
    if (quoted) this.#takeQuoted(bytes);
    else this.#takeLines(bytes, last);
  }

  #takeLines(bytes: Uint8Array, last: boolean): void {
    let from = 0;
    const end = bytes.length;
    while (from < end) {
      let to = bytes.indexOf(NEWLINE, from);
      const whole = to >= 0;
      if (!whole) to = end;
      let stop = to;
      while (stop > from && bytes[stop - 1] === RETURN) stop--;
      // Old line ends: a lone return inside is an end too.
      const lone = bytes.indexOf(RETURN, from);
      if (lone >= 0 && lone < stop) {
        let at = from;
        let next = lone;
        while (next >= 0 && next < stop) {
          this.#takeLine(bytes, at, next, false);
          at = next + 1;
          next = bytes.indexOf(RETURN, at);
        }
        if (at < stop) this.#takeLine(bytes, at, stop, !whole && last);
      } else this.#takeLine(bytes, from, stop, !whole && last);
      from = to + 1;
    }
  }

  #takeLine(bytes: Uint8Array, from: number, to: number, cut: boolean): void {
    this.#line += 1;
    if (this.#line < this.#layout.firstRowLine || to === from) return;
    if (!this.#bytewise) {
      this.#takeCells(splitLine(this.#text(bytes.subarray(from, to)), this.#layout.delimiter, this.#layout.cuts), cut);
      return;
    }
    const width = this.#columns.length;
    let count = 0;
    let start = from;
    const starts = this.#starts;
    starts[0] = from;
    let clean = true;
    for (let i = from; i < to; i++) {
      if (bytes[i] !== this.#separator) continue;
      count++;
      if (count <= width) starts[count] = i + 1;
      else clean = false;
      start = i + 1;
    }
    const cells = count + 1;
    const tail = cells === width + 1 && isBlank(bytes, start, to);
    if (!clean || (cells !== width && !tail) || cut || this.#isSuspect(bytes, from, to)) {
      this.#takeCells(splitLine(this.#text(bytes.subarray(from, to)), this.#layout.delimiter, this.#layout.cuts), cut);
      return;
    }
    starts[width] = tail ? start : to + 1;
    for (let c = 0; c < width; c++) {
      const column = this.#columns[c];
      if (!column) continue;
      const a = starts[c] ?? 0;
      const b = (starts[c + 1] ?? 0) - 1;
      if (column.kind === 'number') {
        const value = parsePlainNumber(bytes, a, b, this.#point);
        if (!Number.isNaN(value)) {
          column.pushNumber(value);
          continue;
        }
        if (b <= a) {
          column.pushMissing();
          continue;
        }
      }
      column.pushText(this.#text(bytes.subarray(a, b)));
    }
    this.counts.rows += 1;
  }

  // A line that may be a repeated header, a comment or a note: its first cell starts with a letter or a mark.
  #isSuspect(bytes: Uint8Array, from: number, to: number): boolean {
    let i = from;
    while (i < to && (bytes[i] === 32 || bytes[i] === 9)) i++;
    const first = bytes[i] ?? 0;
    if (first === 35 || first === 33 || first === 37 || first === 47) return true;
    const letter = (first >= 65 && first <= 90) || (first >= 97 && first <= 122) || first > 127;
    if (letter) return true;
    return first === this.#separator && this.#columns[0]?.kind !== 'text'
      ? isHeaderLike(bytes, from, to, this.#separator)
      : false;
  }

  #takeQuoted(bytes: Uint8Array): void {
    const text = this.#text(bytes);
    const parsed = Papa.parse<string[]>(text, { delimiter: this.#layout.delimiter, skipEmptyLines: false });
    // A quoted line break makes one row of two lines: count the breaks inside cells as well.
    parsed.data.forEach((cells, i) => {
      const isLast = i === parsed.data.length - 1;
      if (isLast && cells.length === 1 && cells[0] === '') return;
      this.#line += 1;
      if (this.#line >= this.#layout.firstRowLine && !(cells.length === 1 && (cells[0] ?? '').trim() === '')) {
        this.#takeCells(cells, false);
      }
      this.#line += cells.reduce((sum, cell) => sum + (cell.match(/\n/g)?.length ?? 0), 0);
    });
  }

  #takeCells(given: readonly string[], cut: boolean): void {
    const width = this.#columns.length;
    let cells = given;
    while (cells.length > width && (cells.at(-1) ?? '').trim() === '') cells = cells.slice(0, -1);
    if (cells.every((cell) => cell.trim() === '')) return;
    const first = (cells[0] ?? '').trim();
    if (/^(#|\/\/|%|!)/.test(first) && this.#layout.headerCells[0]?.trim() !== first) return;
    if (this.#sameAs(cells, this.#layout.headerCells)) {
      this.counts.repeatedHeaders += 1;
      this.counts.breaks.push(this.counts.rows);
      return;
    }
    if (this.#layout.unitsCells.length > 0 && this.#sameAs(cells, this.#layout.unitsCells)) return;
    const { decimal } = this.#layout;
    const filled = cells.filter((cell) => cell.trim() !== '');
    const readings = filled.filter((cell) => isReading(cellKind(cell, decimal))).length;
    if (readings === 0) {
      this.#reject(filled.length > 0 ? `no reading in it: "${filled.join(' ').slice(0, 60)}"` : 'empty');
      return;
    }
    if (cells.length > width) {
      this.#reject(`${cells.length} cells where the header has ${width}`);
      return;
    }
    if (cells.length < width) {
      if (cut) {
        this.counts.truncated = true;
        this.#reject('the last line is cut');
        return;
      }
      if (this.counts.ragged === 0) this.counts.firstRaggedLine = this.#line;
      this.counts.ragged += 1;
    }
    for (let c = 0; c < width; c++) {
      const column = this.#columns[c];
      const cell = cells[c];
      if (cell === undefined || cell.trim() === '') column?.pushMissing();
      else column?.pushText(cell);
    }
    this.counts.rows += 1;
  }

  #sameAs(cells: readonly string[], header: readonly string[]): boolean {
    if (header.length === 0) return false;
    const same = cells.filter((cell, i) => cell.trim() === (header[i] ?? '').trim() && cell.trim() !== '').length;
    const named = header.filter((cell) => cell.trim() !== '').length;
    return named > 0 && same >= 0.8 * named;
  }

  #reject(reason: string): void {
    this.counts.rejectedCount += 1;
    if (this.counts.rejected.length < MOST_REJECTED) this.counts.rejected.push({ line: this.#line, reason });
  }
}

function isBlank(bytes: Uint8Array, from: number, to: number): boolean {
  for (let i = from; i < to; i++) if (bytes[i] !== 32 && bytes[i] !== 9) return false;
  return true;
}

function isHeaderLike(bytes: Uint8Array, from: number, to: number, separator: number): boolean {
  let letters = 0;
  let cells = 1;
  for (let i = from; i < to; i++) {
    const byte = bytes[i] ?? 0;
    if (byte === separator) cells++;
    else if ((byte >= 65 && byte <= 90) || (byte >= 97 && byte <= 122)) letters++;
  }
  return letters >= cells;
}
