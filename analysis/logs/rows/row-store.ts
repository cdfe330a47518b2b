/** All columns of a file while its rows are read, and the counts of what was left out. */
import type { RejectedRow } from '../read-outcome.ts';
import { type ColumnStore, growColumn, trimColumn } from './column-store.ts';
import { countRow } from './number-column.ts';

export const MOST_REJECTED = 1000;
/** Numbers one reading may hold: more would not fit a person's computer. */
export const MOST_CELLS = 160_000_000;

export interface RowStore {
  columns: ColumnStore[];
  /** rows read, count */
  rows: number;
  /** cells behind the last named column that every row has, count */
  unnamed: number;
  /** rows the columns have room for, count */
  capacity: number;
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
  return {
    columns,
    rows: 0,
    unnamed,
    capacity,
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
 * Make room for more rows.
 * @param store the store
 * @param wanted rows that may come, count
 * @returns rows there is room for, at most those wanted; 0 when it can grow no further
 */
export function roomFor(store: RowStore, wanted: number): number {
  if (store.rows + wanted > store.capacity) {
    const most = Math.floor(MOST_CELLS / Math.max(1, store.columns.length));
    const grown = Math.max(1024, store.rows + wanted, Math.ceil(store.capacity * 1.6));
    const capacity = Math.max(store.capacity, Math.min(most, grown));
    if (capacity > store.capacity) for (const column of store.columns) growColumn(column, capacity);
    store.capacity = capacity;
  }
  const room = Math.min(wanted, store.capacity - store.rows);
  if (room === 0) store.full = true;
  return room;
}

/**
 * Count the row that was put into the columns.
 * @param store the store
 */
export function acceptRow(store: RowStore): void {
  for (const column of store.columns) if (column.kind === 'number') countRow(column.numbers, store.rows);
  store.rows += 1;
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
