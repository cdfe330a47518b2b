/** A channel that stands at exactly one value while the airplane and its engine go on changing. */
import { baseName, type Quantity } from '../../units/index.ts';
import type { LogChannel, LogTable } from '../table.ts';
import { equalRuns, type RowSpan } from './row-span.ts';

const LEAST_SECONDS = 60;
const LEAST_ROWS = 30;
const LONG_SECONDS = 300;

/** Channels whose readings are never still in a running airplane. */
const RESTLESS = [
  'engine-speed',
  'indicated-airspeed',
  'true-airspeed',
  'ground-speed',
  'manifold-pressure',
  'pressure-altitude',
  'gps-altitude',
  'reported-altitude',
];

/** Channels that may stand for a whole flight, yet not while others tell of speed. */
const JUDGED_ALTHOUGH_STILL = ['engine-speed', 'indicated-airspeed', 'vertical-speed'];

/** Rows at which the restless channels changed, as running counts. */
export interface Movement {
  channel: LogChannel;
  changes: Int32Array;
}

/**
 * How often each restless channel had changed up to each row.
 * @param table the log, table
 * @returns one count a restless channel
 */
export function movementOf(table: LogTable): Movement[] {
  const restless = table.channels.filter((c) => c.quantity !== null && RESTLESS.includes(baseName(c.quantity)));
  return restless.map((channel) => {
    const changes = new Int32Array(channel.values.length);
    for (let i = 1; i < changes.length; i += 1) {
      const step = (channel.values[i] ?? Number.NaN) - (channel.values[i - 1] ?? Number.NaN);
      changes[i] = (changes[i - 1] ?? 0) + (Number.isFinite(step) && step !== 0 ? 1 : 0);
    }
    return { channel, changes };
  });
}

/**
 * Stretches in which a channel is stuck. Slow, coarse channels stand still honestly: a stretch counts only when it is
 * far longer than every other one of its own channel.
 * @param channel the channel, object
 * @param quantity its glossary entry, object
 * @param t seconds of the rows, s
 * @param movement what the restless channels did
 * @returns stretches of rows
 */
export function findStuck(
  channel: LogChannel,
  quantity: Quantity,
  t: Float64Array,
  movement: readonly Movement[],
): RowSpan[] {
  if (quantity.dimension === 'none') return [];
  const mayStand = quantity.frozenOk === true;
  if (mayStand && !JUDGED_ALTHOUGH_STILL.includes(baseName(quantity.name))) return [];
  const { values } = channel;
  const seconds = ({ from, to }: RowSpan) => (t[to] ?? 0) - (t[from] ?? 0);
  const runs = equalRuns(values);
  if (runs.length < 2) return [];
  const isLong = (run: RowSpan) => run.to - run.from + 1 >= LEAST_ROWS && seconds(run) >= LEAST_SECONDS;
  const long = runs.filter(isLong);
  if (long.length === 0 || long.length > 3) return [];
  const usual = runs.reduce((most, run) => (isLong(run) ? most : Math.max(most, seconds(run))), 0);
  let low = Number.POSITIVE_INFINITY;
  for (const v of values) if (v < low) low = v;
  return long.filter((run) => {
    const value = values[run.from] ?? Number.NaN;
    // the bottom of its range is where the channel of a stopped engine or a parked airplane stands
    if (value <= low && (mayStand || value === 0)) return false;
    if (mayStand && value === 0) return false;
    const length = seconds(run);
    const farOut = length >= (mayStand ? 10 : 5) * usual;
    const longAndOdd = !mayStand && length >= LONG_SECONDS && length >= 2.5 * usual;
    return (farOut || longAndOdd) && othersMove(run, channel, movement);
  });
}

function othersMove({ from, to }: RowSpan, channel: LogChannel, movement: readonly Movement[]): boolean {
  const enough = Math.max(5, 0.1 * (to - from));
  return movement.some(
    (other) => other.channel !== channel && (other.changes[to] ?? 0) - (other.changes[from] ?? 0) >= enough,
  );
}
