/** Scatter by medians: one wild value moves neither the centre nor the width. */
import { median } from './quantile.ts';

/** MAD of a normal distribution times this is its standard deviation. */
const NORMAL_FACTOR = 1.4826;

/**
 * Median and robust standard deviation.
 * @param values any order, any one unit; NaN left out
 * @returns median, and 1.4826 times the median absolute deviation, unit of the values; NaN for an empty set
 * @source Hampel 1974; the factor is 1 over the normal quantile at 3/4 [memory]
 */
export function medianDeviation(values: ArrayLike<number>): { median: number; deviation: number } {
  const middle = median(values);
  const away = Float64Array.from(values, (value) => Math.abs(value - middle));
  return { median: middle, deviation: NORMAL_FACTOR * median(away) };
}

/**
 * Values that stand apart from the rest of their own set.
 * @param values any order, any one unit; NaN is never an outlier, it is missing
 * @param factor how many robust standard deviations, pure number
 * @param least smallest distance that counts, unit of the values: keeps a coarse step from making outliers
 * @returns true where a value stands further off than both, one a value
 * @source Hampel identifier [memory]
 */
export function standApart(values: ArrayLike<number>, factor: number, least: number): boolean[] {
  const { median: middle, deviation } = medianDeviation(values);
  const limit = Math.max(least, factor * deviation);
  return Array.from({ length: values.length }, (_, i) => Math.abs((values[i] ?? Number.NaN) - middle) > limit);
}
