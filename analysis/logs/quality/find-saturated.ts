/** Plateaus at the top of a channel's range that the trace runs into and is cut off by. */
import type { Quantity } from '../../units/index.ts';
import { equalRuns, type RowSpan } from './row-span.ts';
import { valueSteps } from './value-steps.ts';

const LEAST_ROWS = 10;

/**
 * Plateaus at the channel's greatest value. A coarse reading that lingers at its top is none: the trace must arrive
 * there by more than two of its own steps, twice at least, and never stand nearly as long anywhere else.
 * @param values one a row, SI; NaN where missing
 * @param quantity glossary entry, object
 * @returns stretches of rows
 */
export function findSaturated(values: Float64Array, quantity: Quantity): RowSpan[] {
  if (quantity.dimension === 'none' || quantity.frozenOk === true) return [];
  let top = Number.NEGATIVE_INFINITY;
  for (const v of values) if (v > top) top = v;
  const runs = equalRuns(values);
  const { quantum } = valueSteps(values);
  const length = ({ from, to }: RowSpan) => to - from + 1;
  const atTop = runs.filter((run) => values[run.from] === top && length(run) >= LEAST_ROWS);
  const longestElsewhere = runs.reduce((m, run) => (values[run.from] === top ? m : Math.max(m, length(run))), 0);
  const cutOff = atTop.filter(({ from }) => from > 0 && top - (values[from - 1] ?? Number.NaN) > 2 * quantum);
  if (cutOff.length < 2 || atTop.some((run) => length(run) < 3 * longestElsewhere)) return [];
  return atTop;
}
