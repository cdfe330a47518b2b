/** How long a channel usually stands at one value, told from samples of it. */

const WINDOWS = 32;
const WINDOW_ROWS = 256;

/**
 * The length that all but a share of the runs do not pass.
 * @param values one a row, any one unit; missing values end a run
 * @param share of runs that may be longer, 0 to 1
 * @param least runs that may be longer at least, count
 * @returns rows
 */
export function usualRun(values: Float64Array, share: number, least: number): number {
  const lengths = new Int32Array((WINDOWS + 2) * WINDOW_ROWS);
  let n = 0;
  const stride = Math.max(WINDOW_ROWS, Math.floor(values.length / WINDOWS));
  for (let start = 0; start < values.length; start += stride) {
    const end = Math.min(values.length, start + WINDOW_ROWS);
    let from = start;
    for (let i = start + 1; i <= end; i += 1) {
      if (i < end && values[i] === values[from]) continue;
      if (!Number.isNaN(values[from] ?? Number.NaN)) lengths[n++] = i - from;
      from = i;
    }
  }
  const sorted = lengths.subarray(0, n).sort();
  return sorted[n - 1 - Math.max(least, Math.ceil(share * n))] ?? Number.POSITIVE_INFINITY;
}
