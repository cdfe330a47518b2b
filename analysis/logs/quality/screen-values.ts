/** One look over a channel: its extent, and where it stands still. Most channels need no second one. */
import type { KeptNumbers, NumberPiece } from '../rows/kept-numbers.ts';
import { gapOf } from '../rows/number-column.ts';
import type { RowSpan } from './row-span.ts';

/** Fewer equal rows are no standing still. */
export const LONG_RUN_ROWS = 10;
const MOST_LONG_RUNS = 1000;
export interface Screen {
  /** rows with a number, count */
  there: number;
  low: number;
  high: number;
  /** largest change between rows with a number, unit of the values */
  largestStep: number;
  /** the longest stretches of equal numbers: all of LONG_RUN_ROWS and more, or the longest thousand or so */
  longRuns: RowSpan[];
}

/** A stretch of equal numbers. */
interface Run {
  from: number;
  rows: number;
  value: number;
}

interface RunSearch {
  runs: RowSpan[];
  /** shorter runs are not kept */
  least: number;
}

/**
 * Look at a column.
 * @param kept its numbers as written
 * @param factor SI value of one unit, number
 * @param offset added after it, SI
 * @returns what they are like, SI
 */
export function screenKept(kept: KeptNumbers, factor: number, offset: number): Screen {
  const search: RunSearch = { runs: [], least: LONG_RUN_ROWS };
  let open: Run = { from: 0, rows: 0, value: Number.NaN };
  let row = 0;
  for (const { values, places } of kept.pieces) {
    const gap = gapOf(values);
    const numberOf = (at: number) => {
      const value = values[at] ?? Number.NaN;
      return value === gap ? Number.NaN : value / 10 ** places;
    };
    const head = equalFrom(values, 0);
    // A run may go on from the piece before.
    const first = numberOf(0);
    if (open.rows > 0 && first === open.value) open.rows += head;
    else {
      keepRun(search, open);
      open = { from: row, rows: head, value: first };
    }
    if (head < values.length) {
      keepRun(search, open);
      const tail = equalBefore(values);
      findRuns(values, gap, head, tail, row, search);
      open = { from: row + tail, rows: values.length - tail, value: numberOf(tail) };
    }
    row += values.length;
  }
  keepRun(search, open);
  return {
    there: kept.there,
    low: kept.low * factor + offset,
    high: kept.high * factor + offset,
    largestStep: kept.largestStep * factor,
    longRuns: search.runs,
  };
}

function equalFrom(values: NumberPiece['values'], from: number): number {
  let to = from;
  while (to < values.length && values[to] === values[from]) to += 1;
  return Math.max(to - from, Math.min(1, values.length - from));
}

/** First row of the run that the piece ends with. */
function equalBefore(values: NumberPiece['values']): number {
  let from = values.length - 1;
  while (from > 0 && values[from - 1] === values[values.length - 1]) from -= 1;
  return from;
}

/** A run of so many rows holds two neighbours of every half as many rows: only those are compared, the rest skipped. */
function findRuns(
  values: NumberPiece['values'],
  gap: number,
  from: number,
  to: number,
  row: number,
  search: RunSearch,
): void {
  let next = from;
  while (next < to) {
    const stride = search.least >> 1;
    while (next + stride < to && values[next] !== values[next + stride]) next += stride;
    if (next + stride >= to) return;
    const value = values[next] ?? gap;
    let first = next;
    while (first > from && values[first - 1] === value) first -= 1;
    let end = next + 1;
    while (end < to && values[end] === value) end += 1;
    next = end;
    if (value !== gap) keepRun(search, { from: row + first, rows: end - first, value });
  }
}

function keepRun(search: RunSearch, { from, rows, value }: Run): void {
  if (rows < search.least || Number.isNaN(value)) return;
  search.runs.push({ from, to: from + rows - 1 });
  while (search.runs.length > MOST_LONG_RUNS) {
    search.least *= 2;
    search.runs = search.runs.filter((run) => run.to - run.from + 1 >= search.least);
  }
}
