/** One look over a channel: its extent, and where it stands still. Most channels need no second one. */
import { type KeptNumbers, longRuns } from '../rows/kept-numbers.ts';
import type { RowSpan } from './row-span.ts';

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

/**
 * Look at a column.
 * @param kept its numbers as written
 * @param factor SI value of one unit, number
 * @param offset added after it, SI
 * @returns what they are like, SI
 */
export function screenKept(kept: KeptNumbers, factor: number, offset: number): Screen {
  return {
    there: kept.there,
    low: kept.low * factor + offset,
    high: kept.high * factor + offset,
    largestStep: kept.largestStep * factor,
    longRuns: longRuns(kept),
  };
}
