/** A channel read at other times than its own; directions turn the short way. */
import { wrapTurn } from '../air/index.ts';
import { type Series, valuesAt } from '../logs/index.ts';

/** Channels that jump by a full turn. */
const TURNS = new Set(['track-true', 'heading-magnetic', 'wind-direction']);

/**
 * Values of a series at given times, linear between neighbours no further apart than the series may be held.
 * @param series a channel on the common clock, object
 * @param times rising, s
 * @returns values in the series' unit, one a time; NaN over gaps and outside the record. Directions stay in one turn
 */
export function sampleAt(series: Series, times: ArrayLike<number>): Float64Array {
  if (!TURNS.has(series.quantity)) return valuesAt(series, times);
  return valuesAt({ ...series, v: unwrapped(series.v) }, times).map(wrapTurn);
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
