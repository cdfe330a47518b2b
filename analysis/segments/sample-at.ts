/** A channel read at other times than its own: between two samples where they are near enough, never over a gap. */

import { wrapTurn } from '../air/index.ts';
import type { Series } from '../logs/index.ts';

/** Channels that jump by a full turn. */
const TURNS = new Set(['track-true', 'heading-magnetic']);

/**
 * Values of a series at given times, linear between neighbours no further apart than the series may be held.
 * @param series a channel on the common clock, object
 * @param times rising, s
 * @returns values in the series' unit, one a time; NaN over gaps and outside the record. Directions turn the short way
 */
export function sampleAt(series: Series, times: ArrayLike<number>): Float64Array {
  const out = new Float64Array(times.length).fill(Number.NaN);
  const turns = TURNS.has(series.quantity);
  const { t, v } = series;
  const reach = Math.max(series.holdSeconds, 1e-6);
  let i = nextValid(v, 0);
  if (i < 0) return out;
  let j = nextValid(v, i + 1);
  for (let k = 0; k < times.length; k += 1) {
    const at = times[k] ?? Number.NaN;
    while (j >= 0 && (t[j] ?? 0) < at) {
      i = j;
      j = nextValid(v, j + 1);
    }
    const [ti, vi] = [t[i] ?? 0, v[i] ?? Number.NaN];
    if (at === ti) out[k] = vi;
    else if (at > ti && j >= 0) {
      const tj = t[j] ?? ti;
      if (tj - ti <= reach || at === tj) out[k] = between(vi, v[j] ?? vi, tj > ti ? (at - ti) / (tj - ti) : 1, turns);
    }
  }
  return out;
}

function between(a: number, b: number, share: number, turns: boolean): number {
  if (!turns) return a + share * (b - a);
  return wrapTurn(a + share * (wrapTurn(b - a + Math.PI) - Math.PI));
}

function nextValid(v: Float64Array, from: number): number {
  for (let i = from; i < v.length; i += 1) if (!Number.isNaN(v[i])) return i;
  return -1;
}

/**
 * A direction made continuous: full turns are counted on instead of jumping.
 * @param angles directions, rad; NaN passes through
 * @returns the same directions plus whole turns, rad
 */
export function unwrapped(angles: ArrayLike<number>): Float64Array {
  let last = Number.NaN;
  return Float64Array.from(angles, (angle) => {
    if (Number.isNaN(angle)) return Number.NaN;
    last = Number.isNaN(last) ? angle : last + (wrapTurn(angle - last + Math.PI) - Math.PI);
    return last;
  });
}
