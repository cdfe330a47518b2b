/** How a file is built, from its head: what parts the cells, where names, units and rows stand. */
import type { Encoding } from './encoding.ts';
import { findDelimiter, type Parted } from './find-delimiter.ts';
import { findRows } from './first-row.ts';
import { headLines } from './head-lines.ts';
import { findHeader } from './header-block.ts';
import type { Layout } from './layout.ts';
import { nameColumns } from './name-columns.ts';

export const MAX_COLUMNS = 4096;
const MOST_PREAMBLE_LINES = 200;

export interface FoundLayout {
  layout: Layout;
  /** lines of the head that are rows */
  rowLines: string[];
}

/**
 * How a file is built.
 * @param text head of the file, text
 * @param complete true when the head is the whole file
 * @param encoding encoding of the file, text
 * @returns the layout, or null when no rows of readings were found in the head
 */
export function findLayout(text: string, complete: boolean, encoding: Encoding): FoundLayout | null {
  const lines = headLines(text, complete);
  const parted = findDelimiter(lines.map((one) => one.text));
  const found = parted && findRows(lines, parted);
  if (!parted || !found) return null;
  const { first, rows } = found;
  const block = findHeader(lines, first, parted);
  const named = lastFilled(block.names);
  const trailing = named < parted.width && named > 0 && hasTrailing(rows, parted);
  const width = trailing ? parted.width - 1 : Math.max(parted.width, named);
  const { columns, duplicates } = nameColumns(block.names, block.units?.cells ?? [], block.otherUnits, width);
  const layout: Layout = {
    encoding,
    delimiter: parted.delimiter,
    decimal: parted.decimal,
    decimalOpen: parted.decimalOpen,
    headerLine: block.header?.line ?? null,
    unitsLine: block.units?.line ?? null,
    firstRowLine: lines[first]?.line ?? 1,
    preamble: lines
      .filter((one) => one.line < block.firstLine && one.text.trim() !== '')
      .slice(0, MOST_PREAMBLE_LINES)
      .map((one) => one.text.trim().slice(0, 300)),
    columns,
    headerCells: block.header?.cells ?? [],
    unitsCells: block.units?.cells ?? [],
    cuts: parted.cuts,
    trailingDelimiter: trailing,
    duplicates,
    firstLines: lines.slice(0, 30).map((one) => one.text.slice(0, 400)),
  };
  return { layout, rowLines: rows };
}

function lastFilled(cells: readonly string[]): number {
  for (let i = cells.length; i > 0; i--) if ((cells[i - 1] ?? '').trim() !== '') return i;
  return 0;
}

/** Every row ends with a delimiter, behind which no column is named. */
function hasTrailing(rows: readonly string[], { delimiter }: Parted): boolean {
  return (
    delimiter.length === 1 &&
    rows.slice(0, 50).every((row) => row.trimEnd().endsWith(delimiter) || row.endsWith(delimiter))
  );
}
