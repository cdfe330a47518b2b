/** Moving median without phase shift: a spike shorter than half the window leaves no trace. */
import { selected } from './quantile.ts';

/**
 * Median over a window about each sample; the window shrinks evenly towards the ends, missing samples are passed over.
 * @param values evenly spaced, any one unit, NaN where missing
 * @param width full width, samples
 * @returns smoothed values, same unit; NaN only where a whole window is missing
 * @source running median [memory]
 */
export function movingMedian(values: Float64Array, width: number): Float64Array {
  const n = values.length;
  const most = Math.floor(width / 2);
  if (most < 1) return values.slice();
  const near = new Float64Array(2 * most + 1);
  return values.map((_, i) => {
    const half = Math.min(most, i, n - 1 - i);
    let count = 0;
    for (let k = i - half; k <= i + half; k += 1) {
      const value = values[k] ?? Number.NaN;
      if (Number.isNaN(value)) continue;
      near[count] = value;
      count += 1;
    }
    return count === 0 ? Number.NaN : middleOf(near.subarray(0, count));
  });
}

function middleOf(values: Float64Array): number {
  const n = values.length;
  const upper = selected(values, n >> 1);
  return n % 2 === 1 ? upper : (upper + selected(values, (n >> 1) - 1)) / 2;
}
