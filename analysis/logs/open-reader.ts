/** A reader that is fed a file piece by piece: dialect from the head, rows into columns, then their meaning. */
import { type Problem, problem } from '../remarks/index.ts';
import { finishReading } from './finish-reading.ts';
import type { ReadOptions, ReadOutcome } from './read-outcome.ts';
import { columnKinds } from './rows/column-kinds.ts';
import { ColumnStore } from './rows/column-store.ts';
import { RowReader } from './rows/row-reader.ts';
import { type Encoding, notText, sniffEncoding, textOf, toAsciiCompatible } from './text/encoding.ts';
import { findLayout, MAX_COLUMNS } from './text/find-layout.ts';
import type { Layout } from './text/layout.ts';

export interface PushReader {
  push(chunk: Uint8Array): void;
  finish(): ReadOutcome;
}

const HEAD = 65_536;
const LONGEST_LINE = 1 << 20;
const NEWLINE = 10;
const RETURN = 13;

/** All that reading the rows left behind. */
export interface Gathered {
  options: ReadOptions;
  bytes: number;
  encoding: Encoding | null;
  layout: Layout | null;
  columns: ColumnStore[];
  rows: RowReader | null;
  nulBytes: number;
  problem: Problem | null;
  /** first lines when no layout was found */
  firstLines: string[];
}

/**
 * Open a reader for one file.
 * @param options name, hash, what a person confirmed
 * @returns functions to push the bytes in order and to end
 */
export function openReader(options: ReadOptions): PushReader {
  const gathered: Gathered = {
    options,
    bytes: 0,
    encoding: null,
    layout: null,
    columns: [],
    rows: null,
    nulBytes: 0,
    problem: null,
    firstLines: [],
  };
  let pending: Uint8Array<ArrayBufferLike> = new Uint8Array(0);
  let decode: (piece: Uint8Array, last: boolean) => Uint8Array = (piece) => piece;
  let begun = false;

  const begin = (whole: boolean): void => {
    begun = true;
    const what = notText(pending);
    if (what) {
      gathered.problem = problem('not-a-log', `This is ${what}, not a table of readings.`);
      return;
    }
    const { encoding, markBytes } = sniffEncoding(pending);
    gathered.encoding = encoding;
    decode = toAsciiCompatible(encoding);
    pending = withoutNuls(decode(pending.subarray(markBytes), whole), gathered);
    startRows(gathered, pending, whole);
  };

  const drain = (last: boolean): void => {
    if (gathered.problem || !gathered.rows) return;
    const end = last ? pending.length : lastLineEnd(pending);
    if (end === 0 && pending.length > LONGEST_LINE) {
      gathered.problem = problem('line-too-long', `A line is longer than ${LONGEST_LINE} bytes.`);
      return;
    }
    if (end > 0) gathered.rows.take(pending.subarray(0, end), last);
    pending = pending.slice(end);
  };

  return {
    push(chunk) {
      gathered.bytes += chunk.length;
      if (gathered.problem) return;
      pending = join(pending, begun ? withoutNuls(decode(chunk, false), gathered) : chunk);
      if (!begun && pending.length >= HEAD) begin(false);
      if (begun) drain(false);
    },
    finish() {
      if (!gathered.problem && gathered.bytes > 0) {
        if (!begun) begin(true);
        else pending = join(pending, decode(new Uint8Array(0), true));
        drain(true);
      }
      for (const column of gathered.columns) column.finish();
      return finishReading(gathered);
    },
  };
}

/**
 * Read a file that is in memory.
 * @param bytes the file
 * @param options name, hash, what a person confirmed
 * @returns the reading
 */
export function readLogBytes(bytes: Uint8Array, options: ReadOptions): ReadOutcome {
  const reader = openReader({ sizeBytes: bytes.length, ...options });
  for (let from = 0; from < bytes.length; from += HEAD * 16) reader.push(bytes.subarray(from, from + HEAD * 16));
  return reader.finish();
}

function startRows(gathered: Gathered, head: Uint8Array, whole: boolean): void {
  const { options, encoding } = gathered;
  const text = textOf(encoding ?? 'utf-8')(head.subarray(0, whole ? head.length : lastLineEnd(head)));
  gathered.firstLines = text
    .split(/\r\n|\n|\r/)
    .slice(0, 30)
    .map((line) => line.slice(0, 400));
  if (!whole && lastLineEnd(head) === 0) {
    gathered.problem = problem('line-too-long', `The first line does not end within ${HEAD} bytes.`);
    return;
  }
  const widest = gathered.firstLines.reduce((most, line) => Math.max(most, line.split(/[,;\t|]/).length), 0);
  if (widest > MAX_COLUMNS) {
    gathered.problem = problem('too-many-columns', `The file has more than ${MAX_COLUMNS} columns.`);
    return;
  }
  const layout = findLayout(text, whole, encoding ?? 'utf-8');
  if (!layout) {
    const header = gathered.firstLines.filter((line) => line.trim() !== '');
    gathered.problem =
      header.length > 0 &&
      header.length <= 3 &&
      (header[0] ?? '').split(/[,;\t|]/).filter((cell) => cell.trim() !== '').length >= 2
        ? problem('no-rows', 'A header stands in the file, but no row of numbers follows it.', { line: 1 })
        : problem('not-a-log', 'No rows of readings were found: the file is text, not a table.', { line: 1 });
    return;
  }
  const decimal = options.map?.decimal ?? layout.decimal;
  gathered.layout = { ...layout, decimal };
  if (layout.columns.length > MAX_COLUMNS) {
    gathered.problem = problem('too-many-columns', `The file has ${layout.columns.length} columns.`);
    return;
  }
  const perRow = Math.max(8, head.length / Math.max(1, text.split('\n').length));
  const capacity = Math.min(4_000_000, Math.ceil(((options.sizeBytes ?? head.length) / perRow) * 1.05) + 16);
  const kinds = columnKinds(text, gathered.layout);
  gathered.columns = kinds.map((kind) => new ColumnStore(kind, decimal, capacity));
  gathered.rows = new RowReader(gathered.layout, gathered.columns);
}

function lastLineEnd(bytes: Uint8Array): number {
  const newline = bytes.lastIndexOf(NEWLINE);
  if (newline >= 0) return newline + 1;
  // Old line ends; a return at the very end may belong to a pair that is cut.
  const lone = bytes.subarray(0, -1).lastIndexOf(RETURN);
  return lone + 1;
}

function withoutNuls(bytes: Uint8Array, gathered: Gathered): Uint8Array {
  if (bytes.indexOf(0) < 0) return bytes;
  const kept = bytes.filter((byte) => byte !== 0);
  gathered.nulBytes += bytes.length - kept.length;
  return kept;
}

function join(a: Uint8Array, b: Uint8Array): Uint8Array {
  if (a.length === 0) return b;
  if (b.length === 0) return a;
  const both = new Uint8Array(a.length + b.length);
  both.set(a);
  both.set(b, a.length);
  return both;
}
