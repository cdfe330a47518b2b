/** Normalised correlation of two even signals with holes. */

/**
 * Pearson correlation of a with b moved later by a lag.
 * @param a one value a step; NaN where missing
 * @param b one value a step; NaN where missing
 * @param lag steps by which b is moved later, count
 * @param least fewest common steps that count
 * @param from first step of b used, count
 * @param to step of b to stop before, count
 * @returns -1 to 1, or NaN when too few are common or one does not change
 * @source product-moment correlation [memory]
 */
export function correlationAt(
  a: Float64Array,
  b: Float64Array,
  lag: number,
  least: number,
  from = 0,
  to = b.length,
): number {
  let [n, sa, sb, saa, sbb, sab] = [0, 0, 0, 0, 0, 0];
  const end = Math.min(to, a.length - lag);
  for (let j = Math.max(from, -lag); j < end; j += 1) {
    const x = a[j + lag] ?? Number.NaN;
    const y = b[j] ?? Number.NaN;
    const xy = x * y;
    if (xy - xy !== 0) continue;
    n += 1;
    sa += x;
    sb += y;
    saa += x * x;
    sbb += y * y;
    sab += xy;
  }
  if (n < Math.max(2, least)) return Number.NaN;
  const spread = (saa - (sa * sa) / n) * (sbb - (sb * sb) / n);
  return spread > 0 ? (sab - (sa * sb) / n) / Math.sqrt(spread) : Number.NaN;
}

/** A greatest correlation: lag in steps with its fraction. */
export interface Peak {
  lag: number;
  value: number;
  /** true when the curve was still rising at an end of the lags searched */
  atEnd: boolean;
}

/**
 * The greatest value of a correlation curve, with a parabola through its neighbours.
 * @param lags whole lags from the first one on
 * @param first lag of the first value, steps
 * @returns the peak, or undefined when nothing is finite
 */
export function peakOf(lags: Float64Array, first: number): Peak | undefined {
  let best = -1;
  for (let i = 0; i < lags.length; i += 1) {
    const value = lags[i] ?? Number.NaN;
    if (Number.isFinite(value) && (best < 0 || value > (lags[best] ?? 0))) best = i;
  }
  if (best < 0) return undefined;
  const [before, value, after] = [lags[best - 1], lags[best] ?? 0, lags[best + 1]];
  const atEnd = before === undefined || after === undefined || !Number.isFinite(before + after);
  const bend = atEnd ? 0 : before - 2 * value + after;
  const fraction = bend < 0 && !atEnd ? (0.5 * (before - after)) / bend : 0;
  return { lag: first + best + fraction, value, atEnd };
}
