/** Values of a channel at other times: for computing only, never across a gap. */
import type { Series } from './recording.ts';

/**
 * A channel's values at times of another one, by straight lines between neighbours no further apart than its hold.
 * @param series the channel, SI
 * @param times rising, s on the common clock
 * @returns one value a time, SI; NaN outside the channel, inside a gap, or next to a missing value
 */
export function valuesAt(series: Series, times: ArrayLike<number>): Float64Array {
  const { t, v, holdSeconds } = series;
  const out = new Float64Array(times.length).fill(Number.NaN);
  let i = 0;
  for (let k = 0; k < times.length; k += 1) {
    const time = times[k] ?? Number.NaN;
    while (i + 1 < t.length && (t[i + 1] ?? Number.POSITIVE_INFINITY) <= time) i += 1;
    const before = t[i] ?? Number.NaN;
    if (before === time) {
      out[k] = v[i] ?? Number.NaN;
      continue;
    }
    const after = t[i + 1] ?? Number.NaN;
    if (!(before < time && time < after && after - before <= holdSeconds)) continue;
    const share = (time - before) / (after - before);
    out[k] = (v[i] ?? Number.NaN) * (1 - share) + (v[i + 1] ?? Number.NaN) * share;
  }
  return out;
}
