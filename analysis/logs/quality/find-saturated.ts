/** Plateaus at the top of a channel's range that the trace runs into and is cut off by. */
import type { Quantity } from '../../units/index.ts';
import { valuesOneByOne } from '../lazy-channel.ts';
import type { LogChannel } from '../table.ts';
import type { RowSpan } from './row-span.ts';
import type { Screen } from './screen-values.ts';

/** A rounded peak lingers a little more than twice as long in its last step as in the one before. */
const LONGER_THAN_BELOW = 8;
const LONGER_THAN_ANYWHERE = 3;

/**
 * Plateaus at the channel's greatest value. A coarse reading that lingers at its top is none: the trace must run into
 * it twice at least, stay far longer than it took for the step just below, and never stand nearly as long elsewhere.
 * @param channel the channel, values SI; NaN where missing
 * @param quantity glossary entry, object
 * @param screen what a first look showed, object
 * @returns stretches of rows
 */
export function findSaturated(channel: LogChannel, quantity: Quantity, screen: Screen): RowSpan[] {
  if (quantity.dimension === 'none' || quantity.frozenOk === true || screen.longRuns.length < 2) return [];
  const valueAt = valuesOneByOne(channel);
  const runs = screen.longRuns.filter(({ from }) => !Number.isNaN(valueAt(from)));
  const top = runs.reduce((most, { from }) => Math.max(most, valueAt(from)), Number.NEGATIVE_INFINITY);
  // Spikes above it have been taken out since; anything else above means that it is no end of the range.
  if (screen.high > top && (channel.written || channel.values.some((value) => value > top))) return [];
  const rows = ({ from, to }: RowSpan) => to - from + 1;
  const atTop = runs.filter(({ from }) => valueAt(from) === top);
  const elsewhere = runs.reduce((most, run) => (valueAt(run.from) === top ? most : Math.max(most, rows(run))), 0);
  const cutOff = atTop.filter((run) => {
    const [before, after] = [standing(valueAt, run.from - 1, -1), standing(valueAt, run.to + 1, 1)];
    return before > 0 && after > 0 && rows(run) >= LONGER_THAN_BELOW * Math.min(before, after);
  });
  if (cutOff.length < 2 || atTop.some((run) => rows(run) < LONGER_THAN_ANYWHERE * elsewhere)) return [];
  return atTop;
}

/** Rows the channel stands at one value, from a row on in one direction. */
function standing(valueAt: (row: number) => number, from: number, by: 1 | -1): number {
  const held = valueAt(from);
  let rows = 0;
  for (let i = from; valueAt(i) === held; i += by) rows += 1;
  return rows;
}
