/** From the head of a file: its layout, and columns made ready for its rows. */
import { problem } from '../remarks/index.ts';
import type { Gathered } from './gathered.ts';
import { columnKinds, type HeadKind } from './rows/column-kinds.ts';
import { columnStore } from './rows/column-store.ts';
import { type RowReader, rowReader } from './rows/row-reader.ts';
import { MOST_CELLS, type RowStore, rowStore } from './rows/row-store.ts';
import { textOf } from './text/encoding.ts';
import { findLayout, MAX_COLUMNS } from './text/find-layout.ts';
import type { Layout } from './text/layout.ts';
import { splitLine } from './text/split-line.ts';

const LONGEST_HEAD_LINE = 1 << 20;
const ROWS_FOR_KINDS = 400;
/** Room for this share more rows than the head promises. */
const SPARE = 1.02;

/** What the head of a file tells: plain data, from which stores for its rows are made. */
export interface FoundHead {
  layout: Layout;
  kinds: HeadKind[];
  /** usual length of a row, letters */
  rowLength: number;
}

/**
 * Find the layout and make the columns.
 * @param gathered what is known of the file, object; changed
 * @param head first bytes of the file, in an ASCII-compatible encoding, bytes
 * @param whole true when they are all of it
 * @returns the reader of rows, or null when the head shows no layout (or a problem, which is then set)
 */
export function startRows(gathered: Gathered, head: Uint8Array, whole: boolean): RowReader | null {
  const found = findHead(gathered, head, whole);
  if (!found) return null;
  gathered.store = storeFor(found, gathered.options.sizeBytes ?? gathered.bytes);
  return rowReader(found.layout, gathered.store, { exact: gathered.options.exact === true });
}

/**
 * Find the layout.
 * @param gathered what is known of the file, object; changed
 * @param head first bytes of the file, in an ASCII-compatible encoding, bytes
 * @param whole true when they are all of it
 * @returns what the head tells, or null when it shows no layout (or a problem, which is then set)
 */
export function findHead(gathered: Gathered, head: Uint8Array, whole: boolean): FoundHead | null {
  const { options } = gathered;
  const encoding = gathered.encoding ?? 'utf-8';
  const end = whole ? head.length : Math.max(head.lastIndexOf(10), head.lastIndexOf(13)) + 1;
  if (end === 0 || longestLine(head) > LONGEST_HEAD_LINE) {
    if (whole || head.length > LONGEST_HEAD_LINE) {
      gathered.problem = problem('line-too-long', 'A line is longer than a million letters.', { line: 1 });
    }
    return null;
  }
  const text = textOf(encoding)(head.subarray(0, end));
  gathered.firstLines = text.split(/\r\n|\n|\r/, 30).map((line) => line.slice(0, 400));
  const widest = text.split(/\r\n|\n|\r/, 300).reduce((most, line) => Math.max(most, line.split(/[,;\t|]/).length), 0);
  if (widest > MAX_COLUMNS) {
    gathered.problem = problem(
      'too-many-columns',
      `The file has ${widest} columns, more than the ${MAX_COLUMNS} allowed.`,
    );
    return null;
  }
  const found = findLayout(text, whole, encoding);
  if (!found) return null;
  const layout = { ...found.layout, decimal: options.map?.decimal ?? found.layout.decimal };
  gathered.layout = layout;
  if (layout.columns.length > MAX_COLUMNS) {
    gathered.problem = problem('too-many-columns', `The file has ${layout.columns.length} columns.`);
    return null;
  }
  const rows = found.rowLines.slice(0, ROWS_FOR_KINDS).map((line) => splitLine(line, layout.delimiter, layout.cuts));
  const kinds = columnKinds(rows, layout.columns.length, layout.decimal);
  layout.columns.forEach((header, i) => {
    if (header.unitText === '') header.unitText = kinds[i]?.suffix ?? '';
  });
  const { rowLines } = found;
  const rowLength = rowLines.reduce((sum, line) => sum + line.length + 1, 0) / Math.max(1, rowLines.length);
  return { layout, kinds, rowLength };
}

/**
 * Columns for the rows of a file, or of a piece of it.
 * @param found what its head told, object
 * @param size of the file or piece, bytes
 * @returns the store, empty
 */
export function storeFor({ layout, kinds, rowLength }: FoundHead, size: number): RowStore {
  const most = Math.floor(MOST_CELLS / Math.max(1, layout.columns.length));
  const capacity = Math.min(most, Math.ceil((SPARE * size) / Math.max(2, rowLength)) + 16);
  const columns = kinds.map(({ kind, ...more }) => columnStore(kind, capacity, more));
  return rowStore(columns, layout.trailingDelimiter ? 1 : 0, capacity);
}

function longestLine(head: Uint8Array): number {
  let longest = 0;
  let from = 0;
  while (from < head.length) {
    let to = head.indexOf(10, from);
    if (to < 0) to = head.length;
    longest = Math.max(longest, to - from);
    from = to + 1;
  }
  return longest;
}
