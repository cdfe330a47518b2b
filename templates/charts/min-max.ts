/**
 * Samples for a chart of so many pixels: in each column of pixels the smallest and the largest value, in their order.
 * A single-sample spike is kept by construction; averaging and skipping would hide what an engine did.
 */

export interface Thinned {
  x: number[];
  /** null ends the line: nothing was recorded there */
  y: (number | null)[];
}

/**
 * Thin a channel for drawing.
 * @param t seconds, never falling
 * @param v values, NaN where missing
 * @param span seconds shown, both ends inside
 * @param columns columns of pixels, 1 or more
 * @returns at most two samples a column, one sample beyond each end so that the line leaves the picture
 */
export function thin(t: Float64Array, v: Float64Array, span: { from: number; to: number }, columns: number): Thinned {
  const first = Math.max(0, firstAtOrAfter(t, span.from) - 1);
  const last = Math.min(t.length - 1, firstAtOrAfter(t, span.to));
  const thinned: Thinned = { x: [], y: [] };
  const width = (span.to - span.from) / Math.max(1, columns);
  let missing = false;
  let at = first;
  while (at <= last) {
    const column = columnOf(t[at] ?? 0, span.from, width);
    let low = -1;
    let high = -1;
    for (; at <= last && columnOf(t[at] ?? 0, span.from, width) === column; at++) {
      const value = v[at] ?? Number.NaN;
      if (Number.isNaN(value)) {
        missing = true;
        continue;
      }
      if (low < 0 || value < (v[low] ?? 0)) low = at;
      if (high < 0 || value > (v[high] ?? 0)) high = at;
    }
    if (low < 0) continue;
    if (missing && thinned.x.length > 0) push(thinned, t[Math.min(low, high)] ?? 0, null);
    missing = Number.isNaN(v[at - 1] ?? Number.NaN);
    for (const index of low === high ? [low] : [Math.min(low, high), Math.max(low, high)]) {
      push(thinned, t[index] ?? 0, v[index] ?? null);
    }
  }
  return thinned;
}

function push(thinned: Thinned, x: number, y: number | null): void {
  thinned.x.push(x);
  thinned.y.push(y);
}

function columnOf(seconds: number, from: number, width: number): number {
  return width > 0 ? Math.floor((seconds - from) / width) : 0;
}

/** Index of the first sample at or after a time; the length where there is none. */
function firstAtOrAfter(t: Float64Array, seconds: number): number {
  let low = 0;
  let high = t.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((t[middle] ?? 0) < seconds) low = middle + 1;
    else high = middle;
  }
  return low;
}
