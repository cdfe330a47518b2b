/** One or two rows that leave the trace by a step no airplane can make, and come back. */
import type { Quantity } from '../../units/index.ts';
import { impossibleRate } from './impossible-rate.ts';
import type { RowSpan } from './row-span.ts';
import { valueSteps } from './value-steps.ts';

/** Times the robust deviation of the channel's own steps. */
const TIMES_OWN_SCATTER = 8;
/** A fast recorder's noise is not judged by a step shorter than this, s. */
const SHORTEST_STEP_SECONDS = 0.5;

/**
 * Spikes of a channel.
 * @param values one a row, SI; NaN where missing
 * @param quantity glossary entry, object
 * @param t seconds of the rows, s
 * @returns stretches of one or two rows
 */
export function findSpikes(values: Float64Array, quantity: Quantity, t: Float64Array): RowSpan[] {
  const rate = impossibleRate(quantity);
  if (rate === null) return [];
  const { deviation, quantum } = valueSteps(values);
  const least = Math.max(TIMES_OWN_SCATTER * deviation, 3 * quantum);
  const spans: RowSpan[] = [];
  const value = (row: number) => values[row] ?? Number.NaN;
  const limit = (row: number) =>
    Math.max(least, rate * Math.max(SHORTEST_STEP_SECONDS, (t[row] ?? 0) - (t[row - 1] ?? 0)));
  for (let i = 1; i + 1 < values.length; i += 1) {
    const out = value(i) - value(i - 1);
    if (!(Math.abs(out) > limit(i))) continue;
    for (let last = i; last <= i + 1; last += 1) {
      const back = value(last) - value(last + 1);
      const comesBack = Math.abs(back) > limit(last + 1) && Math.sign(back) === Math.sign(out);
      if (!comesBack || Math.abs(value(last + 1) - value(i - 1)) > 0.5 * Math.abs(out)) continue;
      spans.push({ from: i, to: last });
      i = last;
      break;
    }
  }
  return spans;
}
