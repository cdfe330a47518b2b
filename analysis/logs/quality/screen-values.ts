/** One look over a channel, on the way to SI: its extent, and how it moves. Most channels need no second one. */
import type { RowSpan } from './row-span.ts';

/** A run of fewer equal rows is only counted. */
export const LONG_RUN_ROWS = 10;
const COUNTED_APART = 1024;
const MOST_LONG_RUNS = 1000;

export interface Screen {
  /** rows with a number, count */
  there: number;
  low: number;
  high: number;
  /** largest change between rows with a number, unit of the values */
  largestStep: number;
  /** stretches of equal numbers, single rows included, count */
  runs: number;
  /** stretches of each length in rows; the last place holds all longer ones */
  runsOfLength: Int32Array;
  /** the longest stretches: all of LONG_RUN_ROWS and more, or the longest thousand or so */
  longRuns: RowSpan[];
}

/**
 * Convert the values in place and look at them on the way.
 * @param values one a row, unit of the file; becomes SI
 * @param factor SI value of one unit, number
 * @param offset added after it, SI
 * @returns what they are like, SI
 */
export function screenValues(values: Float64Array, factor = 1, offset = 0): Screen {
  const rows = values.length;
  const runsOfLength = new Int32Array(COUNTED_APART + 1);
  let longRuns: RowSpan[] = [];
  let leastLong = LONG_RUN_ROWS;
  let there = 0;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  let largestStep = 0;
  let runs = 0;
  let run = 0;
  let before = Number.NaN;
  const endRun = (end: number): void => {
    if (run >= leastLong) {
      longRuns.push({ from: end - run, to: end - 1 });
      if (longRuns.length > MOST_LONG_RUNS) {
        leastLong *= 2;
        longRuns = longRuns.filter(({ from, to }) => to - from + 1 >= leastLong);
      }
    }
    if (run > COUNTED_APART) run = COUNTED_APART;
    runsOfLength[run] = (runsOfLength[run] ?? 0) + 1;
    runs += 1;
  };
  for (let i = 0; i < rows; i += 1) {
    const value = (values[i] ?? 0) * factor + offset;
    values[i] = value;
    // Where nothing changes nothing else can be new; false for a missing value.
    if (value === before && run > 0) {
      run += 1;
      continue;
    }
    if (run > 0) {
      there += run;
      endRun(i);
    }
    if (Number.isNaN(value)) {
      run = 0;
      continue;
    }
    run = 1;
    if (value < low) low = value;
    if (value > high) high = value;
    const step = Math.abs(value - before);
    if (step > largestStep) largestStep = step;
    before = value;
  }
  if (run > 0) {
    there += run;
    endRun(rows);
  }
  return { there, low, high, largestStep, runs, runsOfLength, longRuns };
}

/**
 * The length that all but so many runs do not pass.
 * @param screen from screenValues
 * @param passing runs that may be longer, count
 * @returns rows
 */
export function usualRun({ runsOfLength }: Screen, passing: number): number {
  let left = passing;
  for (let length = runsOfLength.length - 1; length > 0; length -= 1) {
    left -= runsOfLength[length] ?? 0;
    if (left < 0) return length;
  }
  return 0;
}
