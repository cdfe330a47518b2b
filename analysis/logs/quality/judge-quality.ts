/** What is wrong with the channels of a log, said once where it stands; values that are no readings become missing. */
import { flag } from '../../remarks/index.ts';
import { type Quantity, quantityOf } from '../../units/index.ts';
import { valuesOneByOne } from '../lazy-channel.ts';
import { keptAsTheyAre } from '../rows/kept-numbers.ts';
import type { LogChannel, LogTable } from '../table.ts';
import { findFarOutside, findMarkers } from './find-disconnected.ts';
import { findFrozenFix } from './find-frozen-fix.ts';
import { findMissing } from './find-missing.ts';
import { findSaturated } from './find-saturated.ts';
import { findSpikes } from './find-spikes.ts';
import { findStuck, type Movement, movementOf } from './find-stuck.ts';
import { impossibleRate } from './impossible-rate.ts';
import { plausibleRange } from './plausible-range.ts';
import { blank, flagSpans, type RowSpan } from './row-span.ts';
import { type Screen, screenKept } from './screen-values.ts';
import { shownValue } from './shown-value.ts';

/** More than this share of values outside the plausible range, and it is the unit that is wrong. */
const MOSTLY = 0.6;
/** Fewer rows than these are a glitch, more are a sensor that is not there. */
const SHORT = 3;

/** A channel, what it measures, and the first look over it. */
interface Judged {
  channel: LogChannel;
  quantity: Quantity;
  screen: Screen;
}

/**
 * Judges every channel: adds flags; of one that has a quantity blanks spikes, what an absent sensor gives and a repeated
 * satellite fix, and sets the share of valid values anew.
 * @param table the log, values SI where the unit is known; channels are changed in place
 * @param screens what a first look over the channels showed, in their order; made here where it is not given
 */
export function judgeQuality(table: LogTable, screens: readonly (Screen | null)[] = []): void {
  const judged = table.channels.flatMap((channel, i): Judged[] => {
    const quantity = channel.quantity === null ? undefined : quantityOf(channel.quantity);
    if (channel.texts) return [];
    const screen = screens[i] ?? screenKept(keptAsTheyAre(channel.values), 1, 0);
    if (!quantity) {
      // Of a column that means nothing yet it can be said all the same where it is empty.
      if (screen.there > 0) flagMissing(table, channel, screen);
      return [];
    }
    channel.valid = table.rows === 0 ? 0 : screen.there / table.rows;
    return [{ channel, quantity, screen }];
  });
  for (const one of judged) judgeReadings(table, one);
  for (const { channel, spans } of findFrozenFix(table)) {
    flagSpans(table, channel, 'stuck', spans, ({ from }) => {
      return `stands at ${shownValue(channel, valueAt(channel, from))} while the airplane moves; taken as missing`;
    });
    blankSpans(channel, spans);
  }
  let known: Movement[] | undefined;
  const movement = () => {
    known ??= movementOf(table);
    return known;
  };
  for (const one of judged) if (one.screen.longRuns.length > 0) judgeStillness(table, one, movement);
}

function judgeReadings(table: LogTable, { channel, quantity, screen }: Judged): void {
  const t = table.time.seconds;
  flagMissing(table, channel, screen);
  const [low, high] = plausibleRange(quantity);
  const isInside = screen.low >= low && screen.high <= high;
  const rate = impossibleRate(quantity);
  const isSteady = rate === null || screen.largestStep <= 0.5 * rate;
  if (isInside && isSteady) return;
  blankMarkers(table, channel, findMarkers(channel, quantity, t));
  if (channel.unit === null) return;
  if (!isInside) {
    if (flagImplausible(channel, quantity)) return;
    const far = findFarOutside(channel, quantity, t);
    const short = far.filter(({ from, to }) => to - from + 1 < SHORT);
    flagSpans(table, channel, 'spike', short, ({ from, to }) => {
      return `jumps to ${shownValue(channel, valueAt(channel, from))}, as no working sensor does; ${rowsText(from, to)} taken as missing`;
    });
    blankSpans(channel, short);
    blankDisconnected(
      table,
      channel,
      far.filter(({ from, to }) => to - from + 1 >= SHORT),
    );
  }
  const spikes = findSpikes(channel.values, quantity, t);
  flagSpans(table, channel, 'spike', spikes, ({ from, to }) => {
    const [was, seen] = [shownValue(channel, valueAt(channel, from - 1)), shownValue(channel, valueAt(channel, from))];
    return `jumps from ${was} to ${seen} and back; ${rowsText(from, to)} taken as missing`;
  });
  blankSpans(channel, spikes);
}

function flagMissing(table: LogTable, channel: LogChannel, { there }: Screen): void {
  if (there === table.rows) return;
  const missing = findMissing(channel.values);
  flagSpans(table, channel, 'missing-values', missing, ({ from, to }) => `no value in ${rowsText(from, to)}`);
}

function blankMarkers(table: LogTable, channel: LogChannel, spans: readonly RowSpan[]): void {
  const short = spans.filter(({ from, to }) => to - from + 1 < SHORT);
  flagSpans(table, channel, 'spike', short, ({ from, to }) => {
    return `jumps to ${shownValue(channel, valueAt(channel, from))}, which recorders write where there is no reading; ${rowsText(from, to)} taken as missing`;
  });
  blankSpans(channel, short);
  blankDisconnected(
    table,
    channel,
    spans.filter(({ from, to }) => to - from + 1 >= SHORT),
  );
}

function blankDisconnected(table: LogTable, channel: LogChannel, spans: readonly RowSpan[]): void {
  flagSpans(table, channel, 'disconnected', spans, ({ from, to }) => {
    return `reads ${shownValue(channel, valueAt(channel, from))}, as no working sensor does; ${rowsText(from, to)} taken as missing`;
  });
  blankSpans(channel, spans);
}

function blankSpans(channel: LogChannel, spans: readonly RowSpan[]): void {
  if (spans.length === 0) return;
  blank(channel, spans);
  let there = 0;
  for (const value of channel.values) if (!Number.isNaN(value)) there += 1;
  channel.valid = there / channel.values.length;
}

function flagImplausible(channel: LogChannel, quantity: Quantity): boolean {
  if (channel.flags.some((one) => one.kind === 'implausible-unit')) return true;
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

function judgeStillness(
  table: LogTable,
  { channel, quantity, screen }: Judged,
  movement: () => readonly Movement[],
): void {
  const stuck = findStuck(channel, quantity, table.time.seconds, screen, movement);
  flagSpans(table, channel, 'stuck', stuck, ({ from, to }) => {
    return `stands at exactly ${shownValue(channel, valueAt(channel, from))} for ${rowsText(from, to)} while other channels change; values kept`;
  });
  const saturated = findSaturated(channel, quantity, screen);
  flagSpans(table, channel, 'saturated', saturated, ({ from, to }) => {
    return `is cut off at ${shownValue(channel, valueAt(channel, from))} for ${rowsText(from, to)}; values kept, the true ones may be higher`;
  });
}

function valueAt(channel: LogChannel, row: number): number {
  return valuesOneByOne(channel)(row);
}

function rowsText(from: number, to: number): string {
  return from === to ? '1 row' : `${to - from + 1} rows`;
}
