/** Readings over a limit: a healthy sensor that says so three times running stops the gate, whatever the fit says. */
import { evidentRangeOf, type Series } from '../logs/index.ts';
import { type Flag, flag } from '../remarks/index.ts';
import type { Comparison } from '../results/index.ts';
import { show } from '../units/index.ts';
import type { PartLimits } from './cooling-limits.ts';

/** A channel with the stretches in which its sensor was broken, recording time, s. */
export interface WatchedChannel {
  quantity: string;
  series: Series;
  broken: readonly { from: number; to: number }[];
}

/** One or two readings may be a spike. */
const RUNNING = 3;

interface Event {
  fromSeconds: number;
  toSeconds: number;
  highest: number;
  readings: number;
}

/**
 * Events of a channel.
 * @param hot the temperature, object
 * @param limits its limits, object
 * @returns flags for caution and limit, and a comparison that the limit was exceeded
 * @source three readings running over a limit are an event [practice]
 */
export function limitEvents(hot: WatchedChannel, limits: PartLimits): { flags: Flag[]; comparisons: Comparison[] } {
  const flags: Flag[] = [];
  const comparisons: Comparison[] = [];
  const words = (si: number) => show(si, 'degC', { decimals: 1 }).text;
  for (const name of ['limit', 'caution'] as const) {
    const bound = limits[name];
    const event = bound === null ? null : eventOver(hot, bound);
    if (bound === null || event === null) continue;
    const { fromSeconds, toSeconds, highest, readings } = event;
    flags.push(
      flag(
        'limit-event',
        `${hot.quantity} read over its ${name} of ${words(bound)}: ${readings} readings, up to ${words(highest)}`,
        { fromSeconds, toSeconds },
      ),
    );
    if (name === 'caution') continue;
    comparisons.push({
      what: `${hot.quantity} as read, against the limit`,
      limit: bound,
      unit: 'K',
      value: highest,
      u95: null,
      outcome: 'exceeded',
      words: `exceeded: a healthy sensor read over the limit ${RUNNING} times running`,
    });
    break; // over the limit is over the caution too
  }
  return { flags, comparisons };
}

function eventOver({ series, broken }: WatchedChannel, bound: number): Event | null {
  const [low, high] = evidentRangeOf(series);
  let found: Event | null = null;
  let from = -1;
  let running = 0;
  for (let i = 0; i < series.v.length; i += 1) {
    const value = series.v[i] ?? Number.NaN;
    const at = series.t[i] ?? Number.NaN;
    const healthy = value >= low && value <= high && !broken.some((one) => at >= one.from && at <= one.to);
    if (!healthy) continue; // a broken reading is no evidence either way
    if (value <= bound) {
      running = 0;
      continue;
    }
    if (running === 0) from = i;
    running += 1;
    if (running < RUNNING) continue;
    const t = (k: number) => series.t[k] ?? 0;
    if (found === null)
      found = { fromSeconds: t(from), toSeconds: t(i), highest: Number.NEGATIVE_INFINITY, readings: 0 };
    found.toSeconds = t(i);
    found.readings += running === RUNNING ? RUNNING : 1;
    for (let k = running === RUNNING ? from : i; k <= i; k += 1) {
      const seen = series.v[k] ?? Number.NaN;
      if (seen > found.highest && seen <= high) found.highest = seen;
    }
  }
  return found;
}
