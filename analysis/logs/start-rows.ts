/** From the head of a file: its layout, and columns made ready for its rows. */
import { problem } from '../remarks/index.ts';
import type { Gathered } from './gathered.ts';
import { columnKinds } from './rows/column-kinds.ts';
import { columnStore } from './rows/column-store.ts';
import { type RowReader, rowReader } from './rows/row-reader.ts';
import { MOST_CELLS, rowStore } from './rows/row-store.ts';
import { textOf } from './text/encoding.ts';
import { findLayout, MAX_COLUMNS } from './text/find-layout.ts';
import { splitLine } from './text/split-line.ts';

const LONGEST_HEAD_LINE = 1 << 20;
const ROWS_FOR_KINDS = 400;
/** Room for this share more rows than the head promises. */
const SPARE = 1.02;

/**
 * Find the layout and make the columns.
 * @param gathered what is known of the file, object; changed
 * @param head first bytes of the file, in an ASCII-compatible encoding, bytes
 * @param whole true when they are all of it
 * @returns the reader of rows, or null when the head shows no layout (or a problem, which is then set)
 */
export function startRows(gathered: Gathered, head: Uint8Array, whole: boolean): RowReader | null {
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
  const capacity = expectedRows(gathered, found.rowLines, layout.columns.length);
  const columns = kinds.map(({ kind, ...more }) => columnStore(kind, capacity, more));
  layout.columns.forEach((header, i) => {
    if (header.unitText === '') header.unitText = kinds[i]?.suffix ?? '';
  });
  gathered.store = rowStore(columns, layout.trailingDelimiter ? 1 : 0, capacity);
  return rowReader(layout, gathered.store, { exact: options.exact === true });
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

function expectedRows({ options, bytes }: Gathered, lines: readonly string[], columns: number): number {
  const length = lines.reduce((sum, line) => sum + line.length + 1, 0) / Math.max(1, lines.length);
  const size = options.sizeBytes ?? bytes;
  const most = Math.floor(MOST_CELLS / Math.max(1, columns));
  return Math.min(most, Math.ceil((SPARE * size) / Math.max(2, length)) + 16);
}
