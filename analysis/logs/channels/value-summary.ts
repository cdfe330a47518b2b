/** What the values of a column look like, for judging a unit against them. */

export interface ValueSummary {
  n: number;
  low: number;
  middle: number;
  high: number;
}

/**
 * Robust extent of a column: 2 %, median and 98 % of its numbers.
 * @param values as written; NaN where missing
 * @returns extent, or null without a number
 */
export function summaryOf(values: Float64Array): ValueSummary | null {
  const step = Math.max(1, Math.floor(values.length / 5000));
  const some: number[] = [];
  for (let i = 0; i < values.length; i += step) {
    const value = values[i] ?? Number.NaN;
    if (Number.isFinite(value)) some.push(value);
  }
  if (some.length === 0) return null;
  some.sort((a, b) => a - b);
  const at = (share: number) => some[Math.min(some.length - 1, Math.round(share * (some.length - 1)))] ?? Number.NaN;
  return { n: some.length, low: at(0.02), middle: at(0.5), high: at(0.98) };
}
