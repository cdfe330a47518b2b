/** Plateaus at the top of a channel's range that the trace runs into and is cut off by. */
import type { Quantity } from '../../units/index.ts';
import type { RowSpan } from './row-span.ts';
import type { Screen } from './screen-values.ts';

/** A rounded peak lingers a little more than twice as long in its last step as in the one before. */
const LONGER_THAN_BELOW = 8;
const LONGER_THAN_ANYWHERE = 3;

/**
 * Plateaus at the channel's greatest value. A coarse reading that lingers at its top is none: the trace must run into
 * it twice at least, stay far longer than it took for the step just below, and never stand nearly as long elsewhere.
 * @param values one a row, SI; NaN where missing
 * @param quantity glossary entry, object
 * @param screen what a first look showed, object
 * @returns stretches of rows
 */
export function findSaturated(values: Float64Array, quantity: Quantity, screen: Screen): RowSpan[] {
  if (quantity.dimension === 'none' || quantity.frozenOk === true || screen.longRuns.length < 2) return [];
  const runs = screen.longRuns.filter(({ from }) => !Number.isNaN(values[from] ?? Number.NaN));
  const top = runs.reduce((most, { from }) => Math.max(most, values[from] ?? most), Number.NEGATIVE_INFINITY);
  // Spikes above it have been taken out since; anything else above means that it is no end of the range.
  if (screen.high > top && values.some((value) => value > top)) return [];
  const rows = ({ from, to }: RowSpan) => to - from + 1;
  const atTop = runs.filter(({ from }) => values[from] === top);
  const elsewhere = runs.reduce((most, run) => (values[run.from] === top ? most : Math.max(most, rows(run))), 0);
  const cutOff = atTop.filter((run) => {
    const [before, after] = [standing(values, run.from - 1, -1), standing(values, run.to + 1, 1)];
    return before > 0 && after > 0 && rows(run) >= LONGER_THAN_BELOW * Math.min(before, after);
  });
  if (cutOff.length < 2 || atTop.some((run) => rows(run) < LONGER_THAN_ANYWHERE * elsewhere)) return [];
  return atTop;
}

/** Rows the channel stands at one value, from a row on in one direction. */
function standing(values: Float64Array, from: number, by: 1 | -1): number {
  const held = values[from];
  if (held === undefined || Number.isNaN(held)) return 0;
  let rows = 0;
  for (let i = from; values[i] === held; i += by) rows += 1;
  return rows;
}
