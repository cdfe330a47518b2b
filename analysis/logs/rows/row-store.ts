/** All columns of a file while its rows are read, and the counts of what was left out. */
import type { RejectedRow } from '../read-outcome.ts';
import { type ColumnStore, cellCode, growColumn, trimColumn } from './column-store.ts';
import { CELL } from './parse-clock.ts';
import type { RowArrays } from './parse-rows.ts';

const MOST_REJECTED = 1000;
/** Numbers one reading may hold: more would not fit a person's computer. */
export const MOST_CELLS = 160_000_000;

export interface RowStore {
  columns: ColumnStore[];
  /** rows read, count */
  rows: number;
  arrays: RowArrays;
  rejected: RejectedRow[];
  rejectedCount: number;
  /** rows with fewer cells than the header, that were kept, count; and the first one's line */
  shortRows: number;
  firstShortLine: number;
  /** rows before which the header stood again */
  breaks: number[];
  repeatedHeaders: number;
  /** the file ends within a line */
  cutLine: 'left out' | 'last cell left out' | null;
  /** the arrays can grow no further */
  full: boolean;
}

/**
 * A store for the rows of a file.
 * @param columns the columns
 * @param unnamed cells behind the last named column that every row has, count
 * @param capacity rows to make room for, count
 * @returns the store, empty
 */
export function rowStore(columns: ColumnStore[], unnamed: number, capacity: number): RowStore {
  const kinds = new Uint8Array(columns.length + unnamed).fill(CELL.skip);
  columns.forEach((column, i) => {
    kinds[i] = cellCode(column);
  });
  return {
    columns,
    rows: 0,
    arrays: {
      kinds,
      first: columns.map((column) => column.first),
      second: columns.map((column) => column.second),
      capacity,
    },
    rejected: [],
    rejectedCount: 0,
    shortRows: 0,
    firstShortLine: 0,
    breaks: [],
    repeatedHeaders: 0,
    cutLine: null,
    full: false,
  };
}

/**
 * Make sure that one more row fits.
 * @param store the store
 * @returns false when it can grow no further
 */
export function makeRoom(store: RowStore): boolean {
  if (store.rows < store.arrays.capacity) return true;
  const most = Math.floor(MOST_CELLS / Math.max(1, store.columns.length));
  const capacity = Math.min(most, Math.max(1024, Math.ceil(store.arrays.capacity * 1.6)));
  if (capacity <= store.rows) {
    store.full = true;
    return false;
  }
  for (const column of store.columns) growColumn(column, capacity);
  store.arrays.capacity = capacity;
  takeArrays(store);
  return true;
}

/**
 * Take the columns' arrays anew, after one of them was replaced.
 * @param store the store
 */
export function takeArrays(store: RowStore): void {
  store.columns.forEach((column, i) => {
    store.arrays.first[i] = column.first;
    store.arrays.second[i] = column.second;
    store.arrays.kinds[i] = cellCode(column);
  });
}

/**
 * Note a row that was left out.
 * @param store the store
 * @param line line of the file, from 1
 * @param reason why, text
 */
export function rejectRow(store: RowStore, line: number, reason: string): void {
  store.rejectedCount += 1;
  if (store.rejected.length < MOST_REJECTED) store.rejected.push({ line, reason });
}

/**
 * Cut all columns to the rows read.
 * @param store the store
 */
export function trimRows(store: RowStore): void {
  for (const column of store.columns) trimColumn(column, store.rows);
}
