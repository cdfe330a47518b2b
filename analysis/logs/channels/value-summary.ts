/** What the values of a column look like, for judging a unit against them. */

export interface ValueSummary {
  n: number;
  low: number;
  middle: number;
  high: number;
}

/** Enough values for these shares; a longer log is thinned evenly. */
const MOST_VALUES = 3000;

/**
 * Robust extent of a column: 2 %, median and 98 % of its numbers.
 * @param values as written; NaN where missing
 * @returns extent, or null without a number
 */
export function summaryOf(values: Float64Array): ValueSummary | null {
  const step = Math.max(1, Math.floor(values.length / MOST_VALUES));
  const some = new Float64Array(Math.ceil(values.length / step));
  let n = 0;
  for (let i = 0; i < values.length; i += step) {
    const value = values[i] ?? Number.NaN;
    if (Number.isFinite(value)) some[n++] = value;
  }
  if (n === 0) return null;
  const sorted = some.subarray(0, n).sort();
  const at = (share: number) => sorted[Math.min(n - 1, Math.round(share * (n - 1)))] ?? Number.NaN;
  return { n, low: at(0.02), middle: at(0.5), high: at(0.98) };
}
