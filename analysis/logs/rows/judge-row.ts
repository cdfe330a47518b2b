/** A line that is not plainly a row of readings: the header again, a note, a cut row, or a row after all. */
import { isMissingMark } from '../text/cell.ts';
import type { Layout } from '../text/layout.ts';
import { putCell } from './column-store.ts';
import { type RowStore, rejectRow, takeArrays } from './row-store.ts';

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
  return putRow(store, layout, cells, line);
}

function putRow(store: RowStore, layout: Layout, cells: readonly string[], line: number): Judged {
  const { rows } = store;
  const before = store.columns.map((column) => ({ ...column.odd }));
  let readings = 0;
  let strange = 0;
  let replaced = false;
  store.columns.forEach((column, c) => {
    const { first, undecided } = column;
    const cell = cells[c] ?? '';
    const fine = putCell(column, rows, cell, layout.decimal);
    if (column.first !== first || column.undecided !== undecided) replaced = true;
    if (!fine) strange += 1;
    else if (column.kind !== 'text' && cell.trim() !== '' && !isMissingMark(cell)) readings += 1;
  });
  if (replaced) takeArrays(store);
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
  if (cells.length < store.columns.length) {
    if (isShifted(store, cells.length))
      return refuse(
        `${cells.length} cells where the header has ${store.columns.length}, and they do not fit their columns`,
      );
    if (store.shortRows === 0) store.firstShortLine = line;
    store.shortRows += 1;
  }
  store.rows += 1;
  return 'row';
}

/** A delimiter lost in the middle shifts what follows: two of the last three readings are then far from the row before. */
function isShifted(store: RowStore, cells: number): boolean {
  const { rows, columns } = store;
  if (rows === 0) return false;
  let compared = 0;
  let far = 0;
  for (let c = cells - 1; c >= 0 && compared < 3; c -= 1) {
    const column = columns[c];
    if (column?.kind !== 'number') continue;
    const [now, then] = [column.first[rows] ?? Number.NaN, column.first[rows - 1] ?? Number.NaN];
    if (Number.isNaN(now) || Number.isNaN(then)) continue;
    compared += 1;
    if (Math.abs(now - then) > 0.3 * Math.max(Math.abs(now), Math.abs(then)) + 0.5) far += 1;
  }
  return far >= 2 || (compared === 1 && far === 1);
}

function repeats(cells: readonly string[], known: readonly string[]): boolean {
  const named = known.filter((cell) => cell !== '').length;
  if (named === 0) return false;
  const same = cells.filter((cell, i) => cell.trim() !== '' && cell.trim() === known[i]).length;
  return same >= 0.8 * named;
}
