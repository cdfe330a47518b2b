/** Stretches without a reading. A channel that is recorded at a slower rate than the rows has none for that. */
import { type RowSpan, spansWhere } from './row-span.ts';

/** A slower channel is regular: this share of its pauses are equal. */
const REGULAR = 0.9;

/**
 * Stretches of rows in which a channel has no reading, though it should have one.
 * @param values one a row; NaN where missing
 * @returns stretches of rows
 */
export function findMissing(values: Float64Array): RowSpan[] {
  const spans = spansWhere(values.length, (row) => Number.isNaN(values[row] ?? Number.NaN));
  if (spans.length < 4) return spans;
  // Recorded at every third row, say: pauses of two rows, one after each reading, and only a longer one is a lack.
  const lengths = new Map<number, number>();
  for (const { from, to } of spans) lengths.set(to - from + 1, (lengths.get(to - from + 1) ?? 0) + 1);
  const [usual, count] = [...lengths].reduce((best, one) => (one[1] > best[1] ? one : best), [0, 0]);
  const readings = values.length - spans.reduce((sum, { from, to }) => sum + to - from + 1, 0);
  const isSlower = count >= REGULAR * spans.length && spans.length >= REGULAR * readings - 2;
  return isSlower ? spans.filter(({ from, to }) => to - from + 1 > usual) : spans;
}
