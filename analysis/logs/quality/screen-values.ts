/** One look over a channel, on the way to SI: its extent, and where it stands still. Most channels need no second one. */
import type { RowSpan } from './row-span.ts';

/** Fewer equal rows are no standing still. */
export const LONG_RUN_ROWS = 10;
const MOST_LONG_RUNS = 1000;
/** Rows looked at while they are near the processor. */
const BLOCK = 4096;

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

interface Extent {
  there: number;
  low: number;
  high: number;
  largestStep: number;
  before: number;
}

/**
 * Convert the values in place and look at them on the way.
 * @param values one a row, unit of the file; becomes SI
 * @param factor SI value of one unit, number
 * @param offset added after it, SI
 * @returns what they are like, SI
 */
export function screenValues(values: Float64Array, factor = 1, offset = 0): Screen {
  const extent: Extent = {
    there: 0,
    low: Number.POSITIVE_INFINITY,
    high: Number.NEGATIVE_INFINITY,
    largestStep: 0,
    before: Number.NaN,
  };
  const search: RunSearch = { runs: [], least: LONG_RUN_ROWS, next: 0, open: -1 };
  for (let from = 0; from < values.length; from += BLOCK) {
    const to = Math.min(values.length, from + BLOCK);
    convertBlock(values, from, to, factor, offset, extent);
    findLongRuns(values, to, search);
  }
  const { there, low, high, largestStep } = extent;
  return { there, low, high, largestStep, longRuns: search.runs };
}

/** A loop of its own, whose branches nearly always fall the same way. */
function convertBlock(
  values: Float64Array,
  from: number,
  to: number,
  factor: number,
  offset: number,
  extent: Extent,
): void {
  let { there, low, high, largestStep, before } = extent;
  for (let i = from; i < to; i += 1) {
    const value = (values[i] ?? 0) * factor + offset;
    values[i] = value;
    if (Number.isNaN(value)) continue;
    there += 1;
    if (value < low) low = value;
    if (value > high) high = value;
    const step = value - before;
    before = value;
    if (step > largestStep) largestStep = step;
    else if (-step > largestStep) largestStep = -step;
  }
  extent.there = there;
  extent.low = low;
  extent.high = high;
  extent.largestStep = largestStep;
  extent.before = before;
}

interface RunSearch {
  runs: RowSpan[];
  /** shorter runs are not kept */
  least: number;
  /** row that is looked at next */
  next: number;
  /** first row of a run that goes on past the block, or -1 */
  open: number;
}

/** A run of so many rows holds two neighbours of every half as many rows: only those are compared, the rest skipped. */
function findLongRuns(values: Float64Array, to: number, search: RunSearch): void {
  const isLast = to === values.length;
  while (search.next < to) {
    let { next, open: first } = search;
    if (first < 0) {
      const stride = search.least >> 1;
      while (next + stride < to && values[next] !== values[next + stride]) next += stride;
      search.next = next;
      if (next + stride >= to) return;
      first = next;
      while (first > 0 && values[first - 1] === values[next]) first -= 1;
    }
    let end = next + 1;
    while (end < to && values[end] === values[first]) end += 1;
    search.next = end;
    search.open = end === to && !isLast ? first : -1;
    if (search.open >= 0) {
      search.next = end - 1;
      return;
    }
    if (end - first >= search.least) keepRun(search, { from: first, to: end - 1 });
  }
}

function keepRun(search: RunSearch, run: RowSpan): void {
  search.runs.push(run);
  if (search.runs.length <= MOST_LONG_RUNS) return;
  search.least *= 2;
  search.runs = search.runs.filter(({ from, to }) => to - from + 1 >= search.least);
}
