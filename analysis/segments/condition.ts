/** A condition on a channel: entered inside its band, left only beyond the band and its slack. */

export interface Condition {
  /** what must hold, in words for reasons: "bank under 5°" */
  words: string;
  /** the channel on the common times, smoothed; NaN where missing */
  values: ArrayLike<number>;
  /** the band as numbers of the channel, or about the segment's own median */
  about: 'fixed' | 'own median';
  low: number;
  high: number;
  /** how far beyond the band it may stray before it no longer holds */
  slack: number;
}

/** Half-band beyond a band: what is entered at one band is left at one and a half. */
const SLACK_BANDS = 0.5;

/**
 * A condition of a band either side of zero, or of the segment's own median; left at one and a half bands.
 * @param words what must hold, text
 * @param values smoothed channel, its unit
 * @param band half-width, same unit
 * @param about fixed zero or own median, text
 * @returns the condition
 */
export function within(
  words: string,
  values: ArrayLike<number>,
  band: number,
  about: Condition['about'] = 'fixed',
): Condition {
  return { words, values, about, low: -band, high: band, slack: SLACK_BANDS * band };
}

/** Samples from..to (both included) of the common times. */
export interface Stretch {
  from: number;
  to: number;
}

/**
 * Where a condition holds, with hysteresis. A missing value neither enters nor leaves: gaps are the finder's concern.
 * @param condition channel and band, object
 * @param centre what the band is about, unit of the channel: 0 for a fixed band
 * @param part samples to look at; all when left out
 * @returns stretches of samples, in order
 */
export function stretchesWhere(
  condition: Condition,
  centre = 0,
  part: Stretch = { from: 0, to: condition.values.length - 1 },
): Stretch[] {
  const { values, low, high, slack } = condition;
  const found: Stretch[] = [];
  let open: Stretch | null = null;
  for (let i = part.from; i <= part.to; i += 1) {
    const away = (values[i] ?? Number.NaN) - centre;
    if (Number.isNaN(away)) continue;
    if (open && (away < low - slack || away > high + slack)) open = null;
    else if (!open && away >= low && away <= high) {
      open = { from: i, to: i };
      found.push(open);
    } else if (open) open.to = i;
  }
  return found;
}

/**
 * Stretches common to two lists.
 * @param a stretches in order, list
 * @param b stretches in order, list
 * @returns their intersections, in order
 */
export function intersect(a: readonly Stretch[], b: readonly Stretch[]): Stretch[] {
  const found: Stretch[] = [];
  let j = 0;
  for (const one of a) {
    while (j > 0 && (b[j - 1]?.to ?? -1) >= one.from) j -= 1;
    for (; j < b.length; j += 1) {
      const other = b[j];
      if (!other || other.from > one.to) break;
      const both = { from: Math.max(one.from, other.from), to: Math.min(one.to, other.to) };
      if (both.to >= both.from) found.push(both);
    }
  }
  return found;
}
