/** How long a channel usually stands at one value, told from samples of it. */

const WINDOWS = 32;
const WINDOW_ROWS = 256;

/**
 * The length that all but a share of the runs do not pass.
 * @param rows rows of the channel, count
 * @param valueAt gives the value of a row, any one unit, function; missing values end a run
 * @param share of runs that may be longer, 0 to 1
 * @param least runs that may be longer at least, count
 * @returns rows
 */
export function usualRun(rows: number, valueAt: (row: number) => number, share: number, least: number): number {
  const lengths = new Int32Array((WINDOWS + 2) * WINDOW_ROWS);
  let n = 0;
  const stride = Math.max(WINDOW_ROWS, Math.floor(rows / WINDOWS));
  for (let start = 0; start < rows; start += stride) {
    const end = Math.min(rows, start + WINDOW_ROWS);
    let from = start;
    let held = valueAt(start);
    for (let i = start + 1; i <= end; i += 1) {
      const value = i < end ? valueAt(i) : Number.NaN;
      if (value === held) continue;
      if (!Number.isNaN(held)) lengths[n++] = i - from;
      from = i;
      held = value;
    }
  }
  const sorted = lengths.subarray(0, n).sort();
  return sorted[n - 1 - Math.max(least, Math.ceil(share * n))] ?? Number.POSITIVE_INFINITY;
}
