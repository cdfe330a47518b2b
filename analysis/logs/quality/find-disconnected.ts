/** Values that an open, shorted or absent sensor gives: a recorder's marker, or a stretch far outside all reason. */
import { fromSi, type Quantity } from '../../units/index.ts';
import type { LogChannel } from '../table.ts';
import { impossibleRate } from './impossible-rate.ts';
import { plausibleRange } from './plausible-range.ts';
import { equalRuns, type RowSpan, spansWhere } from './row-span.ts';

/** What recorders write for "no value", in the unit of the file (common practice, no source). */
const MARKERS = [
  -99, -99.9, -999, -999.9, -9999, -32768, -32767, 999, 999.9, 9999, 32767, 32768, 65535, 99999, -99999,
] as const;

/** Beyond the plausible range by this share of its width a value is no reading any more. */
const FAR = 0.1;
/** Where no impossible rate is known, a change by this share of the range within a second is a jump. */
const JUMP = 0.25;

/**
 * Rows that carry a recorder's marker for "no value".
 * @param channel the channel, values SI
 * @param quantity its glossary entry, object
 * @param t seconds of the rows, s
 * @returns stretches of rows
 */
export function findMarkers(channel: LogChannel, quantity: Quantity, t: Float64Array): RowSpan[] {
  const { unit, values } = channel;
  if (unit === null || quantity.dimension === 'none') return [];
  const [low, high] = plausibleRange(quantity);
  const rate = impossibleRate(quantity);
  const isMarker = (value: number) => {
    const written = fromSi(value, unit);
    return MARKERS.some((marker) => Math.abs(written - marker) < 1e-6 * Math.abs(marker));
  };
  return equalRuns(values).filter(({ from, to }) => {
    const value = values[from] ?? Number.NaN;
    const outside = value < low || value > high;
    if (fromSi(value, unit) === 0) return rate !== null && jumpsThereAndBack(values, t, { from, to }, rate);
    if (!outside && rate === null) return false;
    if (!isMarker(value)) return false;
    // a number that the channel may also reach honestly is a marker only where it is jumped to
    return outside || jumpsThereAndBack(values, t, { from, to }, rate ?? 0);
  });
}

/** A number, zero above all, that is jumped to and jumped back from faster than any sensor can follow. */
function jumpsThereAndBack(values: Float64Array, t: Float64Array, { from, to }: RowSpan, rate: number): boolean {
  return jumps(values, t, from, rate) && jumps(values, t, to + 1, rate);
}

function jumps(values: Float64Array, t: Float64Array, row: number, rate: number): boolean {
  const step = Math.abs((values[row] ?? Number.NaN) - (values[row - 1] ?? Number.NaN));
  return step > rate * Math.max(1, (t[row] ?? 0) - (t[row - 1] ?? 0));
}

/**
 * Stretches far outside the plausible range that are jumped to or back from. A reading that
 * climbs out of the range step by step may be true, an overheated cylinder say, and is left.
 * @param channel the channel, values SI
 * @param quantity its glossary entry, object
 * @param t seconds of the rows, s
 * @returns stretches of rows
 */
export function findFarOutside(channel: LogChannel, quantity: Quantity, t: Float64Array): RowSpan[] {
  if (channel.unit === null || quantity.dimension === 'none') return [];
  const { values } = channel;
  const [low, high] = plausibleRange(quantity);
  const reach = FAR * (high - low);
  const far = (row: number) => {
    const value = values[row] ?? Number.NaN;
    return value < low - reach || value > high + reach;
  };
  const rate = impossibleRate(quantity) ?? JUMP * (high - low);
  return spansWhere(values.length, far).filter(
    ({ from, to }) => jumps(values, t, from, rate) || jumps(values, t, to + 1, rate),
  );
}
