/** A channel that answers late, set back to when things happened. */
import type { Series } from '../logs/index.ts';

/**
 * The series with a known lag taken out: each value moves to an earlier time. Nothing is deconvolved.
 * @param series a channel, object
 * @param lagSeconds how late it answers, s, 0 or more
 * @returns the series on times earlier by the lag; the same object for no lag
 */
export function withoutLag(series: Series, lagSeconds: number): Series {
  return lagSeconds === 0 ? series : { ...series, t: series.t.map((time) => time - lagSeconds) };
}
