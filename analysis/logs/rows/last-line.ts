/** The last line of a file that has no line end: whole, or cut where the recorder lost its power. */
import type { Layout } from '../text/layout.ts';
import { type ColumnStore, valueInRow } from './column-store.ts';
import { judgeRow } from './judge-row.ts';
import { type RowStore, rejectRow } from './row-store.ts';

/**
 * Take the last line: a short one is left out, of a full one the last cell is kept only where it shows that it is whole.
 * @param store the rows so far, object; changed
 * @param layout how the file is built, object
 * @param cells cells of the line, texts
 * @param line line of the file, from 1
 */
export function lastLine(store: RowStore, layout: Layout, cells: readonly string[], line: number): void {
  const width = store.columns.length;
  if (cells.every((cell) => cell.trim() === '')) return;
  if (cells.length < width) {
    const isNote = cells.length === 1 && width > 2;
    if (!isNote) store.cutLine = 'left out';
    rejectRow(store, line, isNote ? 'a note at the end' : 'the last line is cut');
    return;
  }
  const column = store.columns[width - 1];
  const cell = (cells[width - 1] ?? '').trim();
  const whole = cells.length > width || column === undefined || isWhole(column, cell, store.rows);
  const kept = whole ? cells : [...cells.slice(0, width - 1), ''];
  if (judgeRow(store, layout, kept, line) === 'row' && !whole) store.cutLine = 'last cell left out';
}

/** A cell is whole when it is a text seen before, or has as many decimals as the cells above it always have. */
function isWhole(column: ColumnStore, cell: string, rows: number): boolean {
  if (column.kind === 'text') return column.indexOfText.has(cell);
  if (column.kind === 'state') return true;
  const places = decimalsOf(cell);
  if (column.kind !== 'number' || places === 0) return false;
  // Numbers of the rows above, written with that many decimals, come back the same; with fewer, some do not.
  const scale = 10 ** places;
  let finer = false;
  for (let row = Math.max(0, rows - 200); row < rows; row++) {
    const value = valueInRow(column, row);
    if (Number.isNaN(value)) continue;
    if (Math.abs(value * scale - Math.round(value * scale)) > 1e-6 * Math.max(1, Math.abs(value * scale))) return false;
    const coarse = (value * scale) / 10;
    if (Math.abs(coarse - Math.round(coarse)) > 1e-6) finer = true;
  }
  return finer;
}

function decimalsOf(cell: string): number {
  const at = Math.max(cell.lastIndexOf('.'), cell.lastIndexOf(','));
  return at < 0 ? 0 : cell.length - at - 1;
}
