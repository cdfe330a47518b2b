/** A satellite position that stands still although the airplane moves: the receiver lost its fix and repeats itself. */
import { channelOf, type LogChannel, type LogTable } from '../table.ts';
import { type RowSpan, spansWhere } from './row-span.ts';
import { valueSteps } from './value-steps.ts';

const LEAST_SECONDS = 3;
const LEAST_ROWS = 5;
const LEAST_SPEED = 5;
/** Mean radius of the earth, m: tells how far one step of a written position reaches. */
const EARTH_RADIUS = 6.371e6;

/** Channels the same receiver gives. */
const OF_RECEIVER = ['latitude', 'longitude', 'ground-speed', 'gps-altitude', 'track-true'];

export interface FrozenFix {
  channel: LogChannel;
  spans: RowSpan[];
}

/**
 * Stretches in which latitude and longitude both repeat while a speed of more than 5 m/s is shown, and the other
 * channels of the receiver that repeat with them. The first row of a stretch is still a true reading and is left.
 * @param table the log, values SI
 * @returns the channels with their stretches of rows
 */
export function findFrozenFix(table: LogTable): FrozenFix[] {
  const latitude = channelOf(table, 'latitude');
  const longitude = channelOf(table, 'longitude');
  const speeds = ['indicated-airspeed', 'true-airspeed', 'ground-speed'].flatMap(
    (name) => channelOf(table, name) ?? [],
  );
  if (!latitude || !longitude || speeds.length === 0) return [];
  const t = table.time.seconds;
  const step = EARTH_RADIUS * Math.max(valueSteps(latitude.values).quantum, valueSteps(longitude.values).quantum);
  const repeats = (channel: LogChannel, row: number) => row > 0 && channel.values[row] === channel.values[row - 1];
  const still = spansWhere(table.rows, (row) => repeats(latitude, row) && repeats(longitude, row));
  const frozen = still.filter(({ from, to }) => {
    const seconds = (t[to] ?? 0) - (t[from - 1] ?? 0);
    if (to - from + 2 < LEAST_ROWS || seconds < LEAST_SECONDS) return false;
    const speed = Math.max(...speeds.map((channel) => slowest(channel, from, to)));
    return speed > LEAST_SPEED && speed * seconds > 5 * step;
  });
  return table.channels
    .filter((channel) => channel.quantity !== null && OF_RECEIVER.includes(channel.quantity))
    .map((channel) => ({ channel, spans: frozen.filter((span) => allRepeat(channel, span, repeats)) }))
    .filter(({ spans }) => spans.length > 0);
}

function slowest(channel: LogChannel, from: number, to: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = from; i <= to; i += 1) {
    const v = channel.values[i] ?? Number.NaN;
    if (v < least) least = v;
  }
  return Number.isFinite(least) ? least : 0;
}

function allRepeat(channel: LogChannel, { from, to }: RowSpan, repeats: (c: LogChannel, row: number) => boolean) {
  for (let i = from; i <= to; i += 1) if (!repeats(channel, i)) return false;
  return true;
}
