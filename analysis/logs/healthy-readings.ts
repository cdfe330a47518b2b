/** Which readings of a channel are evidence: inside what any light airplane shows, and no broken sensor. */
import { quantityOf } from '../units/index.ts';
import { onCommonClock, type Recording, type Series } from './recording.ts';

/**
 * Limits outside which a reading is a fault of sensor or unit.
 * @param series a channel, object
 * @returns lowest and highest, SI; without end where the glossary has none
 */
export function plausibleRangeOf(series: Series): readonly [number, number] {
  return quantityOf(series.quantity)?.plausible ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
}

/** A head that is being destroyed reads beyond what heads ever show; hiding that would be the worst of errors, K. */
const OVERHEATED = 100;

/**
 * The same where an overheated engine is looked for: heads may read beyond what healthy ones show.
 * @param series a channel, object
 * @returns lowest and highest, SI
 */
export function evidentRangeOf(series: Series): readonly [number, number] {
  const [low, high] = plausibleRangeOf(series);
  return [low, series.quantity.startsWith('cylinder-head-temperature') ? high + OVERHEATED : high];
}

const BROKEN = new Set(['spike', 'disconnected', 'saturated']);

/**
 * Stretches the log marks as a broken sensor.
 * @param recording aligned logs, object
 * @param series one of its channels, object
 * @returns spans on the recording's clock, s
 */
export function brokenStretches(recording: Recording, series: Series): { from: number; to: number }[] {
  const at = recording.tables.findIndex((table) => table.file === series.file);
  const common = (seconds: number) => onCommonClock(recording, at, seconds);
  return series.flags
    .filter((one) => BROKEN.has(one.kind) && one.fromSeconds !== undefined)
    .map((one) => ({ from: common(one.fromSeconds ?? 0), to: common(one.toSeconds ?? one.fromSeconds ?? 0) }));
}
