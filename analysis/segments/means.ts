/** What a channel did inside a segment: mean, scatter, how much of it is there. */
import { wrapTurn } from '../air/index.ts';
import type { Recording, Series } from '../logs/index.ts';
import { seriesOf } from '../logs/index.ts';

export interface WithinMeans {
  mean: number;
  /** standard deviation, divisor n - 1 */
  scatter: number;
  n: number;
  /** share of the segment's time covered by samples no further apart than the channel may be held, 0 to 1 */
  covered: number;
  /** longest time without a sample, ends included, s */
  longestGap: number;
}

const DIRECTIONS = new Set(['track-true', 'heading-magnetic', 'wind-direction']);

/**
 * Mean of a channel between two times; of a direction, the direction of the mean vector.
 * @param series a channel, object
 * @param fromSeconds start, s
 * @param toSeconds end, s
 * @returns mean and scatter in the channel's unit, and how much was there; undefined without a sample
 */
export function meanBetween(series: Series, fromSeconds: number, toSeconds: number): WithinMeans | undefined {
  const direction = DIRECTIONS.has(series.quantity);
  const inside: number[] = [];
  let last = fromSeconds;
  let longestGap = 0;
  let missing = 0;
  const step = (to: number) => {
    const gap = to - last;
    longestGap = Math.max(longestGap, gap);
    if (gap > Math.max(series.holdSeconds, 1e-6)) missing += gap;
    last = to;
  };
  for (let i = 0; i < series.t.length; i += 1) {
    const [t, v] = [series.t[i] ?? Number.NaN, series.v[i] ?? Number.NaN];
    if (t < fromSeconds || Number.isNaN(v)) continue;
    if (t > toSeconds) break;
    step(t);
    inside.push(v);
  }
  step(toSeconds);
  if (inside.length === 0) return undefined;
  const mean = direction ? meanDirection(inside) : inside.reduce((sum, v) => sum + v, 0) / inside.length;
  const away = inside.map((v) => (direction ? wrapTurn(v - mean + Math.PI) - Math.PI : v - mean));
  const squares = away.reduce((sum, d) => sum + d * d, 0);
  return {
    mean,
    scatter: inside.length > 1 ? Math.sqrt(squares / (inside.length - 1)) : 0,
    n: inside.length,
    covered: toSeconds > fromSeconds ? 1 - missing / (toSeconds - fromSeconds) : 1,
    longestGap,
  };
}

/**
 * Means of several channels in a segment, for the result's list of segments.
 * @param recording aligned logs, object
 * @param segment start and end, s
 * @param quantities glossary names, list
 * @returns mean by name, SI; null where a channel has no sample there
 */
export function meansOf(
  recording: Recording,
  segment: { fromSeconds: number; toSeconds: number },
  quantities: readonly string[],
): Record<string, number | null> {
  return Object.fromEntries(
    quantities.flatMap((quantity) => {
      const series = seriesOf(recording, quantity);
      if (!series) return [];
      return [[quantity, meanBetween(series, segment.fromSeconds, segment.toSeconds)?.mean ?? null] as const];
    }),
  );
}

function meanDirection(angles: readonly number[]): number {
  const north = angles.reduce((sum, a) => sum + Math.cos(a), 0);
  const east = angles.reduce((sum, a) => sum + Math.sin(a), 0);
  return wrapTurn(Math.atan2(east, north));
}
