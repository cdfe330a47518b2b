/** One column while a file is read: a number a row in a growing array, and what did not fit. */
import { packDate, readClockCell } from '../clock/clock-cell.ts';
import { type Decimal, degreesIn, isMissingMark, numberIn, splitUnit, stateIn } from '../text/cell.ts';
import { isPlainFigure } from '../text/plain-figure.ts';
import { allNumbers, type KeptNumbers, keepNumbers, keptAsTheyAre, NO_NUMBERS } from './kept-numbers.ts';
import { growNumbers, type NumberColumn, numberColumn, numberInRow, putNumber } from './number-column.ts';

export type ColumnKind = 'number' | 'degrees' | 'state' | 'text' | 'time' | 'date' | 'date-time';

/** Cells that were neither a reading nor a mark for none: a few kept, all counted. */
export interface Odd {
  count: number;
  firstRow: number;
  lastRow: number;
  example: string;
}

export interface ColumnStore {
  kind: ColumnKind;
  /** no cell yet has told what the column holds */
  undecided: boolean;
  /** the numbers of a column of numbers, while it is read, and when it has been */
  numbers: NumberColumn;
  kept: KeptNumbers;
  /** state, degrees, seconds, packed date or index of the text, one a row; NaN where empty; none in one of numbers */
  first: Float64Array;
  /** seconds of the day where one cell holds date and time */
  second: Float64Array;
  /** minutes east of UTC, made when the first cell says any */
  offsets: Float64Array | null;
  /** different texts of a text column, in order of appearance */
  texts: string[];
  indexOfText: Map<string, number>;
  /** unit written behind every number, or empty */
  suffix: string;
  odd: Odd;
  formulas: number;
  /** a clock cell as it was written, for telling the order of dates */
  clockExample: string;
}

/**
 * A store for a column.
 * @param kind what its cells hold, text
 * @param capacity rows to make room for, count
 * @param more unit behind every number, text; whether the head had no cell to tell the kind; a cell of it
 * @returns the store
 */
export function columnStore(
  kind: ColumnKind,
  capacity: number,
  more: { suffix?: string; undecided?: boolean; example?: string } = {},
): ColumnStore {
  return {
    kind,
    undecided: more.undecided ?? false,
    numbers: numberColumn(kind === 'number' ? capacity : 0),
    kept: NO_NUMBERS,
    first: new Float64Array(kind === 'number' ? 0 : capacity),
    second: new Float64Array(kind === 'date-time' ? capacity : 0),
    offsets: null,
    texts: [],
    indexOfText: new Map(),
    suffix: more.suffix ?? '',
    odd: { count: 0, firstRow: -1, lastRow: -1, example: '' },
    formulas: 0,
    clockExample: more.example ?? '',
  };
}

/**
 * Put a cell into a column, the exact way.
 * @param store the column
 * @param row the row, count
 * @param cell the cell as written, text
 * @param decimal decimal mark of the file, text
 * @returns true when the cell is a reading, an empty cell or a mark for none; false when it is anything else
 */
export function putCell(store: ColumnStore, row: number, cell: string, decimal: Decimal): boolean {
  const text = cell.trim();
  putValue(store, row, Number.NaN);
  if (store.second.length > 0) store.second[row] = Number.NaN;
  if (text === '') return true;
  if (/^[=@]|^[+-][A-Za-z(]/.test(text)) store.formulas += 1;
  if (store.undecided && !isMissingMark(text)) decide(store, row, text, decimal);
  if (store.kind === 'text') {
    store.first[row] = indexOf(store, text);
    return true;
  }
  const value = readingIn(store, row, text, decimal);
  if (!Number.isNaN(value)) {
    putValue(store, row, value);
    return true;
  }
  if (isMissingMark(text)) return true;
  const { odd } = store;
  if (odd.count === 0) {
    odd.firstRow = row;
    odd.example = text.slice(0, 40);
  }
  odd.lastRow = row;
  odd.count += 1;
  return false;
}

function putValue(store: ColumnStore, row: number, value: number): void {
  if (store.kind === 'number') putNumber(store.numbers, row, value);
  else store.first[row] = value;
}

/**
 * What a column holds in a row that has been put.
 * @param store the column
 * @param row the row, count
 * @returns number, or whatever stands for the cell; NaN where empty
 */
export function valueInRow(store: ColumnStore, row: number): number {
  return store.kind === 'number' ? numberInRow(store.numbers, row) : (store.first[row] ?? Number.NaN);
}

/**
 * The numbers of a column that has been read.
 * @param store the column, trimmed
 * @returns numbers, states or degrees, as written
 */
export function numbersOf(store: ColumnStore): KeptNumbers {
  return store.kind === 'number' ? store.kept : keptAsTheyAre(store.first);
}

/**
 * Put other numbers in the place of those that were read.
 * @param store the column; changed
 * @param change gives the new number from the old one and its row, function
 */
export function changeNumbers(store: ColumnStore, change: (value: number, row: number) => number): void {
  const numbers = allNumbers(numbersOf(store)).map(change);
  if (store.kind === 'number') store.kept = keptAsTheyAre(numbers);
  else store.first = numbers;
}

function readingIn(store: ColumnStore, row: number, text: string, decimal: Decimal): number {
  if (store.kind === 'state') return stateIn(text);
  if (store.kind === 'degrees') {
    const degrees = degreesIn(text);
    return Number.isNaN(degrees) ? numberIn(text, decimal) : degrees;
  }
  if (store.kind === 'number') {
    const value = numberIn(text, decimal);
    if (!Number.isNaN(value)) return value;
    const split = splitUnit(text);
    return split && split.unit === store.suffix ? numberIn(split.number, decimal) : Number.NaN;
  }
  return clockValue(store, row, text);
}

function clockValue(store: ColumnStore, row: number, text: string): number {
  const cell = readClockCell(text);
  if (!cell) return Number.NaN;
  if (store.clockExample === '') store.clockExample = text;
  if (!Number.isNaN(cell.offsetMinutes)) {
    store.offsets ??= new Float64Array(store.first.length).fill(Number.NaN);
    store.offsets[row] = cell.offsetMinutes;
  }
  if (store.kind === 'time') return cell.secondsOfDay;
  if (store.kind === 'date-time') store.second[row] = cell.secondsOfDay;
  return packDate(cell.a, cell.b, cell.c);
}

function indexOf(store: ColumnStore, text: string): number {
  const known = store.indexOfText.get(text);
  if (known !== undefined) return known;
  store.texts.push(text);
  store.indexOfText.set(text, store.texts.length - 1);
  return store.texts.length - 1;
}

/** The head showed no cell of this column: the first one that stands there tells what it holds. */
function decide(store: ColumnStore, row: number, text: string, decimal: Decimal): void {
  store.undecided = false;
  store.kind = kindOf(text, decimal);
  if (store.kind === 'number') return;
  const { length } = store.numbers.values;
  store.numbers = numberColumn(0);
  store.first = new Float64Array(length).fill(Number.NaN, 0, row);
  if (store.kind === 'date-time') store.second = new Float64Array(length).fill(Number.NaN, 0, row);
}

/**
 * The kind of column that a cell speaks for.
 * @param text the cell as written, trimmed, not a mark for no reading
 * @param decimal decimal mark of the file, text
 * @returns the kind
 */
export function kindOf(text: string, decimal: Decimal): ColumnKind {
  if (isPlainFigure(text, decimal) || !Number.isNaN(numberIn(text, decimal)) || splitUnit(text)) return 'number';
  const clock = readClockCell(text);
  if (clock) {
    if (Number.isNaN(clock.secondsOfDay)) return 'date';
    return Number.isNaN(clock.a) ? 'time' : 'date-time';
  }
  if (!Number.isNaN(degreesIn(text))) return 'degrees';
  return Number.isNaN(stateIn(text)) ? 'text' : 'state';
}

/**
 * Make room for more rows.
 * @param store the column
 * @param capacity rows to make room for, count
 */
export function growColumn(store: ColumnStore, capacity: number): void {
  if (store.kind === 'number') growNumbers(store.numbers, capacity);
  else store.first = wider(store.first, capacity);
  if (store.second.length > 0) store.second = wider(store.second, capacity);
  if (store.offsets) {
    const before = store.offsets.length;
    store.offsets = wider(store.offsets, capacity);
    store.offsets.fill(Number.NaN, before);
  }
}

function wider(values: Float64Array, capacity: number): Float64Array {
  const grown = new Float64Array(capacity);
  grown.set(values);
  return grown;
}

/**
 * Cut the arrays of a column to the rows that were read.
 * @param store the column
 * @param rows rows read, count
 */
export function trimColumn(store: ColumnStore, rows: number): void {
  if (store.kind === 'number') store.kept = keepNumbers(store.numbers, rows);
  store.first = store.first.subarray(0, rows);
  if (store.second.length > 0) store.second = store.second.subarray(0, rows);
  if (store.offsets) store.offsets = store.offsets.subarray(0, rows);
}

/**
 * Texts of a text column, one a row; empty where the cell is.
 * @param store the column, trimmed
 * @returns texts, one string object for each different text
 */
export function textsOf(store: ColumnStore): string[] {
  return Array.from(store.first, (index) => store.texts[index] ?? '');
}
