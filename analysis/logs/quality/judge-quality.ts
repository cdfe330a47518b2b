/** What is wrong with the channels of a log, said once where it stands; values that are no readings become missing. */
import { flag } from '../../remarks/index.ts';
import { type Quantity, quantityOf } from '../../units/index.ts';
import type { LogChannel, LogTable } from '../table.ts';
import { findFarOutside, findMarkers } from './find-disconnected.ts';
import { findFrozenFix } from './find-frozen-fix.ts';
import { findSaturated } from './find-saturated.ts';
import { findSpikes } from './find-spikes.ts';
import { findStuck, type Movement, movementOf } from './find-stuck.ts';
import { plausibleRange } from './plausible-range.ts';
import { blank, flagSpans, type RowSpan, spansWhere } from './row-span.ts';
import { shownValue } from './shown-value.ts';

/** More than this share of values outside the plausible range, and it is the unit that is wrong. */
const MOSTLY = 0.6;

/**
 * Judges every channel that has a quantity: adds flags, blanks spikes, what an absent sensor gives and a repeated
 * satellite fix, and sets the share of valid values anew.
 * @param table the log, values SI where the unit is known; channels are changed in place
 */
export function judgeQuality(table: LogTable): void {
  for (const channel of table.channels) {
    const quantity = channel.quantity === null ? undefined : quantityOf(channel.quantity);
    if (quantity && !channel.texts) judgeReadings(table, channel, quantity);
  }
  for (const { channel, spans } of findFrozenFix(table)) {
    flagSpans(table, channel, 'stuck', spans, ({ from }) => {
      return `stands at ${shownValue(channel, valueAt(channel, from))} while the airplane moves; taken as missing`;
    });
    blank(channel, spans);
  }
  const movement = movementOf(table);
  for (const channel of table.channels) {
    const quantity = channel.quantity === null ? undefined : quantityOf(channel.quantity);
    if (!quantity || channel.texts) continue;
    judgeStillness(table, channel, quantity, movement);
    channel.valid = validShare(channel.values);
  }
}

function judgeReadings(table: LogTable, channel: LogChannel, quantity: Quantity): void {
  const t = table.time.seconds;
  const { values } = channel;
  const missing = spansWhere(values.length, (row) => !Number.isFinite(values[row] ?? Number.NaN));
  flagSpans(table, channel, 'missing-values', missing, ({ from, to }) => `no value in ${rowsText(from, to)}`);
  const markers = findMarkers(channel, quantity, t);
  blankDisconnected(table, channel, markers);
  if (channel.unit === null) return;
  if (flagImplausible(channel, quantity)) return;
  blankDisconnected(table, channel, findFarOutside(channel, quantity, t));
  const spikes = findSpikes(values, quantity, t);
  flagSpans(table, channel, 'spike', spikes, ({ from, to }) => {
    const [was, seen] = [shownValue(channel, valueAt(channel, from - 1)), shownValue(channel, valueAt(channel, from))];
    return `jumps from ${was} to ${seen} and back; ${rowsText(from, to)} taken as missing`;
  });
  blank(channel, spikes);
}

function blankDisconnected(table: LogTable, channel: LogChannel, spans: readonly RowSpan[]): void {
  flagSpans(table, channel, 'disconnected', spans, ({ from, to }) => {
    return `reads ${shownValue(channel, valueAt(channel, from))}, as no working sensor does; ${rowsText(from, to)} taken as missing`;
  });
  blank(channel, spans);
}

function flagImplausible(channel: LogChannel, quantity: Quantity): boolean {
  const [low, high] = plausibleRange(quantity);
  let [count, outside] = [0, 0];
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const v of channel.values) {
    if (!Number.isFinite(v)) continue;
    count += 1;
    if (v < low || v > high) outside += 1;
    if (v < least) least = v;
    if (v > most) most = v;
  }
  if (count === 0 || outside <= MOSTLY * count) return false;
  const seen = `${shownValue(channel, least)} to ${shownValue(channel, most)}`;
  const wanted = `${shownValue(channel, low)} to ${shownValue(channel, high)}`;
  channel.flags.push(
    flag(
      'implausible-unit',
      `${channel.column}: read as ${quantity.name} in ${channel.unit} it runs from ${seen}, and ${wanted} is plausible. ` +
        'Set the unit, or the quantity, of this column in the channel table.',
    ),
  );
  return true;
}

function judgeStillness(table: LogTable, channel: LogChannel, quantity: Quantity, movement: readonly Movement[]): void {
  const stuck = findStuck(channel, quantity, table.time.seconds, movement);
  flagSpans(table, channel, 'stuck', stuck, ({ from, to }) => {
    return `stands at exactly ${shownValue(channel, valueAt(channel, from))} for ${rowsText(from, to)} while other channels change; values kept`;
  });
  const saturated = findSaturated(channel.values, quantity);
  flagSpans(table, channel, 'saturated', saturated, ({ from, to }) => {
    return `is cut off at ${shownValue(channel, valueAt(channel, from))} for ${rowsText(from, to)}; values kept, the true ones may be higher`;
  });
}

function valueAt(channel: LogChannel, row: number): number {
  return channel.values[row] ?? Number.NaN;
}

function rowsText(from: number, to: number): string {
  return from === to ? '1 row' : `${to - from + 1} rows`;
}

function validShare(values: Float64Array): number {
  let count = 0;
  for (const v of values) if (Number.isFinite(v)) count += 1;
  return values.length === 0 ? 0 : count / values.length;
}
