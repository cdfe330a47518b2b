/** A channel that stands at exactly one value while the airplane and its engine go on changing. */
import { baseName, type Quantity } from '../../units/index.ts';
import { valuesOneByOne } from '../lazy-channel.ts';
import { LONG_RUN_ROWS } from '../rows/equal-runs.ts';
import type { LogChannel, LogTable } from '../table.ts';
import type { RowSpan } from './row-span.ts';
import type { Screen } from './screen-values.ts';
import { usualRun } from './usual-run.ts';

const LEAST_SECONDS = 60;
const LEAST_ROWS = 30;
const LONG_SECONDS = 300;
/** A channel whose noise changes it at nearly every row is stuck sooner. */
const RESTLESS_RUN = 3;
const RESTLESS_SECONDS = 4;

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
  const known = table.channels.filter((c) => c.quantity !== null && !c.texts);
  const usual = known.filter((c) => c.quantity !== null && RESTLESS.includes(baseName(c.quantity)));
  // A recorder of temperatures alone still shows that it goes on reading.
  const restless = usual.length > 0 ? usual : known;
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
 * @param screen what a first look showed, object
 * @param movement gives what the restless channels did, function
 * @returns stretches of rows
 */
export function findStuck(
  channel: LogChannel,
  quantity: Quantity,
  t: Float64Array,
  screen: Screen,
  movement: () => readonly Movement[],
): RowSpan[] {
  if (quantity.dimension === 'none' || screen.low === screen.high) return [];
  const mayStand = quantity.frozenOk === true;
  if (mayStand && !JUDGED_ALTHOUGH_STILL.includes(baseName(quantity.name))) return [];
  const seconds = ({ from, to }: RowSpan) => (t[to] ?? 0) - (t[from] ?? 0);
  const rows = ({ from, to }: RowSpan) => to - from + 1;
  const valueAt = valuesOneByOne(channel);
  const noisy = usualRun(t.length, valueAt, 0.01, 3) <= RESTLESS_RUN;
  const [leastRows, leastSeconds] = noisy ? [LONG_RUN_ROWS, RESTLESS_SECONDS] : [LEAST_ROWS, LEAST_SECONDS];
  const isLong = (run: RowSpan) => rows(run) >= leastRows && seconds(run) >= leastSeconds;
  // What was blanked since the first look stands for nothing.
  const runs = screen.longRuns.filter(({ from }) => !Number.isNaN(valueAt(from)));
  const long = runs.filter(isLong);
  if (long.length === 0 || long.length > 3) return [];
  const rowSeconds = ((t[t.length - 1] ?? 0) - (t[0] ?? 0)) / Math.max(1, t.length - 1);
  const others = runs.filter((run) => !isLong(run));
  const usual = others.length > 0 ? longestOf(others, seconds) : rowSeconds * LONG_RUN_ROWS;
  let { low } = screen;
  if (!channel.written) {
    low = Number.POSITIVE_INFINITY;
    for (const v of channel.values) if (v < low) low = v;
  }
  return long.filter((run) => {
    const value = valueAt(run.from);
    // the bottom of its range is where the channel of a stopped engine or a parked airplane stands
    if (value <= low && (mayStand || value === 0)) return false;
    if (mayStand && value === 0) return false;
    const length = seconds(run);
    const farOut = length >= (mayStand ? 10 : 5) * usual;
    const longAndOdd = !mayStand && length >= LONG_SECONDS && length >= 2.5 * usual;
    return (farOut || longAndOdd) && othersMove(run, channel, movement());
  });
}

const longestOf = (spans: readonly RowSpan[], seconds: (span: RowSpan) => number) =>
  spans.reduce((most, span) => Math.max(most, seconds(span)), 0);

function othersMove({ from, to }: RowSpan, channel: LogChannel, movement: readonly Movement[]): boolean {
  const enough = Math.max(5, 0.1 * (to - from));
  return movement.some(
    (other) => other.channel !== channel && (other.changes[to] ?? 0) - (other.changes[from] ?? 0) >= enough,
  );
}
