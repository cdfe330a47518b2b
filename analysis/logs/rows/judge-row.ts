/** A line that is not plainly a row of readings: the header again, a note, a cut row, or a row after all. */
import { isMissingMark } from '../text/cell.ts';
import type { Layout } from '../text/layout.ts';
import { type ColumnStore, putCell, valueInRow } from './column-store.ts';
import { acceptRow, type RowStore, rejectRow } from './row-store.ts';

/** What a line turned out to be. */
export type Judged = 'row' | 'header' | 'units' | 'note' | 'blank' | 'rejected';

/**
 * Judge a line by its cells; a row of readings is put into the store.
 * @param store the rows so far, object; changed
 * @param layout how the file is built, object
 * @param given cells of the line, texts
 * @param line line of the file, from 1
 * @returns what it was
 */
export function judgeRow(store: RowStore, layout: Layout, given: readonly string[], line: number): Judged {
  const width = store.columns.length;
  let cells = given;
  while (cells.length > width && (cells.at(-1) ?? '').trim() === '') cells = cells.slice(0, -1);
  if (cells.every((cell) => cell.trim() === '')) return 'blank';
  const first = (cells[0] ?? '').trim();
  if (/^(#|\/\/|%|!)/.test(first) && layout.headerCells[0] !== first) return 'note';
  if (repeats(cells, layout.headerCells)) {
    store.repeatedHeaders += 1;
    if (store.breaks.at(-1) !== store.rows) store.breaks.push(store.rows);
    return 'header';
  }
  if (repeats(cells, layout.unitsCells)) return 'units';
  if (cells.length > width) {
    rejectRow(store, line, `${cells.length} cells where the header has ${width}`);
    return 'rejected';
  }
  // Where every row ends in a delimiter, one empty cell behind the last is no cell.
  return putRow(store, layout, cells, line, given.length - (layout.trailingDelimiter ? 1 : 0) - width);
}

function putRow(store: RowStore, layout: Layout, cells: readonly string[], line: number, extra: number): Judged {
  const { rows } = store;
  const before = store.columns.map((column) => ({ ...column.odd }));
  let readings = 0;
  let strange = 0;
  store.columns.forEach((column, c) => {
    const cell = cells[c] ?? '';
    const fine = putCell(column, rows, cell, layout.decimal);
    if (!fine) strange += 1;
    else if (column.kind !== 'text' && cell.trim() !== '' && !isMissingMark(cell)) readings += 1;
  });
  const lead = store.columns[0];
  const leadIsStrange = lead !== undefined && lead.kind !== 'text' && lead.odd.count > (before[0]?.count ?? 0);
  const refuse = (reason: string): Judged => {
    store.columns.forEach((column, c) => {
      column.odd = before[c] ?? column.odd;
    });
    rejectRow(store, line, reason);
    return 'rejected';
  };
  const shown = cells
    .filter((cell) => cell.trim() !== '')
    .join(' ')
    .slice(0, 60);
  if (readings === 0 || strange > readings) return refuse(`no row of readings: "${shown}"`);
  if (leadIsStrange) return refuse(`"${(cells[0] ?? '').trim().slice(0, 40)}" stands where every row has a reading`);
  const lacking = store.columns.length - cells.length;
  if (lacking > 0 || extra > 0) {
    if (isShifted(store, cells.length, lacking > 0 ? lacking : -extra))
      return refuse(
        `${cells.length + Math.max(0, extra)} cells where the header has ${store.columns.length}, and they do not fit their columns`,
      );
    if (store.shortRows === 0) store.firstShortLine = line;
    store.shortRows += 1;
  }
  acceptRow(store);
  return 'row';
}

/**
 * A cell lost or put in shifts what follows: a reading then is far from the one above it, and near the one above the
 * column that it came from, so many places away.
 */
function isShifted(store: RowStore, cells: number, lost: number): boolean {
  const { rows, columns } = store;
  if (rows === 0) return false;
  let far = 0;
  for (let c = cells - 1; c >= 0 && c >= cells - 3; c -= 1) {
    const now = readingOf(columns[c], rows);
    const then = readingOf(columns[c], rows - 1);
    const shifted = readingOf(columns[c + lost], rows - 1);
    if (Number.isNaN(now) || isNear(now, then)) continue;
    if (isNear(now, shifted)) return true;
    if (!Number.isNaN(then)) far += 1;
  }
  return far >= 2;
}

const isNear = (a: number, b: number) => Math.abs(a - b) <= 0.3 * Math.max(Math.abs(a), Math.abs(b)) + 0.5;

const readingOf = (column: ColumnStore | undefined, row: number) =>
  column?.kind === 'number' ? valueInRow(column, row) : Number.NaN;

function repeats(cells: readonly string[], known: readonly string[]): boolean {
  const named = known.filter((cell) => cell !== '').length;
  if (named === 0) return false;
  const same = cells.filter((cell, i) => cell.trim() !== '' && cell.trim() === known[i]).length;
  return same >= 0.8 * named;
}
