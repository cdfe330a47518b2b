/** Quantiles of a set of values. */

/**
 * The value with the share p of the set below it, linear between order statistics.
 * @param sorted values in rising order, any one unit; Infinity allowed
 * @param p share, 0 to 1
 * @returns quantile in the unit of the values; NaN for an empty set
 * @source sample quantile by linear interpolation at (n - 1) p [memory]
 */
export function quantileOfSorted(sorted: ArrayLike<number>, p: number): number {
  if (sorted.length === 0) return Number.NaN;
  const at = (sorted.length - 1) * Math.min(1, Math.max(0, p));
  const below = Math.floor(at);
  const low = sorted[below] ?? Number.NaN;
  const high = sorted[Math.min(below + 1, sorted.length - 1)] ?? Number.NaN;
  return at === below || low === high ? low : low + (at - below) * (high - low);
}

/**
 * Quantile of an unsorted set; NaN values are left out.
 * @param values any order, any one unit
 * @param p share, 0 to 1
 * @returns quantile in the unit of the values; NaN for an empty set
 * @source as quantileOfSorted [memory]
 */
export function quantile(values: ArrayLike<number>, p: number): number {
  return quantileOfSorted(
    Float64Array.from(values)
      .filter((value) => !Number.isNaN(value))
      .sort(),
    p,
  );
}

/**
 * Middle value; NaN values are left out.
 * @param values any order, any one unit
 * @returns median in the unit of the values; NaN for an empty set
 * @source as quantileOfSorted [memory]
 */
export function median(values: ArrayLike<number>): number {
  return quantile(values, 0.5);
}

/**
 * The value that would stand at a place if the set were sorted. Reorders the set.
 * @param values any order, any one unit, no NaN; reordered in place
 * @param place index from 0
 * @returns value in the unit of the values; NaN for an empty set
 * @source quickselect, middle element as pivot [memory]
 */
export function selected(values: Float64Array, place: number): number {
  let left = 0;
  let right = values.length - 1;
  while (left < right) {
    const pivot = values[(left + right) >> 1] ?? 0;
    let i = left;
    let j = right;
    while (i <= j) {
      while ((values[i] ?? 0) < pivot) i += 1;
      while ((values[j] ?? 0) > pivot) j -= 1;
      if (i <= j) {
        const held = values[i] ?? 0;
        values[i] = values[j] ?? 0;
        values[j] = held;
        i += 1;
        j -= 1;
      }
    }
    if (place <= j) right = j;
    else if (place >= i) left = i;
    else break;
  }
  return values[place] ?? Number.NaN;
}
