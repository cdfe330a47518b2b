/** How fast rows come, told by stamps that may be coarser than the rows. */
import { median } from '../../numbers/index.ts';

export interface Rate {
  /** usual step between different stamps, s */
  step: number;
  /** time a row takes, s */
  row: number;
}

/**
 * The usual rate of stamps without holes.
 * @param held stamps, s, equal ones side by side
 * @returns step and time a row takes; NaN where no two stamps differ forward
 */
export function rowRate(held: Float64Array): Rate {
  // Looked over three times rather than laid down twice: a long log has millions of steps.
  let n = 0;
  for (let i = 1; i < held.length; i += 1) if ((held[i] ?? 0) > (held[i - 1] ?? 0)) n += 1;
  if (n === 0) return { step: Number.NaN, row: Number.NaN };
  const step = middleStep(held, n);
  let time = 0;
  let rows = 0;
  let start = 0;
  let k = 0;
  for (let i = 1; i < held.length; i += 1) {
    const one = (held[i] ?? 0) - (held[i - 1] ?? 0);
    if (one === 0) continue;
    // The first stamp may have been met in its middle.
    const counts = one > 0 && (k > 0 || n <= 2) && Math.abs(one - step) <= 0.5 * step;
    if (counts) {
      time += one;
      rows += i - start;
    }
    if (one > 0) k += 1;
    start = i;
  }
  return { step, row: rows > 0 ? time / rows : step };
}

/** Enough steps for a median; a longer log is thinned evenly. */
const MOST_STEPS = 20_001;

/** The middle of the steps forward, of which there are so many. */
function middleStep(held: Float64Array, count: number): number {
  const stride = Math.ceil(count / MOST_STEPS);
  const some = new Float64Array(Math.floor(count / stride));
  let k = 0;
  let skip = 0;
  for (let i = 1; i < held.length && k < some.length; i += 1) {
    const step = (held[i] ?? 0) - (held[i - 1] ?? 0);
    if (!(step > 0)) continue;
    if (skip > 0) skip -= 1;
    else {
      some[k] = step;
      k += 1;
      skip = stride - 1;
    }
  }
  return median(some);
}

/**
 * The usual step from row to row.
 * @param seconds times of the rows, s
 * @returns median, s; 0 for a single row
 */
export function usualStep(seconds: Float64Array): number {
  const count = seconds.length - 1;
  if (count < 1) return 0;
  const stride = Math.ceil(count / MOST_STEPS);
  const some = new Float64Array(Math.floor(count / stride));
  for (let k = 0; k < some.length; k += 1) some[k] = (seconds[k * stride + 1] ?? 0) - (seconds[k * stride] ?? 0);
  return median(some);
}

/**
 * Times of rows whose stamps repeat: spread evenly until the next stamp, or by the rate where a pause follows.
 * @param held stamps, s, never falling from `from` to `to`
 * @param from first row
 * @param to row after the last
 * @param rate usual rate
 * @param out where the times are put, s
 */
export function spreadRows(held: Float64Array, from: number, to: number, rate: Rate, out: Float64Array): void {
  if (spreadEvenly(held, from, to, rate, out)) return;
  let row = rate.row;
  for (let start = from; start < to; ) {
    const stamp = held[start] ?? 0;
    let next = start + 1;
    // Stamps as fine as the rows, which is what nearly every row shows: it stands where it says.
    const ahead = next < to && start > from ? (held[next] ?? 0) - stamp : 0;
    if (ahead > 0 && ahead <= 1.5 * rate.step) {
      out[start] = stamp;
      row = ahead;
      start = next;
      continue;
    }
    while (next < to && held[next] === stamp) next += 1;
    const count = next - start;
    const after = next < to ? (held[next] ?? 0) : Number.NaN;
    const room = after - stamp;
    // The last stamp may be cut short, the first met in its middle; a pause is not spread over.
    const paused = Number.isNaN(room) || room > 1.5 * Math.max(rate.step, count * row);
    const coarse = rate.row < 0.75 * rate.step;
    const late = coarse && start === from && next < to && !paused && (count + 0.5) * row < room;
    // As many rows as fit between two stamps, and one more for their rounding, is no stamp that stood still.
    const early = start === from && !Number.isNaN(room) && count > Math.floor(room / row + 1e-6) + 1;
    if (late || early) for (let k = start; k < next; k += 1) out[k] = after - (next - k) * row;
    else {
      const each = paused ? row : room / count;
      // The first row stands at its stamp, also where there is no rate to tell.
      for (let k = start; k < next; k += 1) out[k] = k === start ? stamp : stamp + (k - start) * each;
      if (!paused && room <= 1.5 * rate.step) row = each;
    }
    start = next;
  }
}

/**
 * Rows at one even rate whose stamps were cut to coarser ones: where one first moment makes every stamp of a stretch
 * the last one passed, the rows stand at that rate, from the earliest such moment.
 */
function spreadEvenly(held: Float64Array, from: number, to: number, { row, step }: Rate, out: Float64Array): boolean {
  if (!(row < 0.95 * step) || to - from > MOST_EVEN) return false;
  for (const each of [roundRate(row, 2), roundRate(row, 3), row]) {
    const begin = evenFrom(held, from, to, each, step);
    if (Number.isNaN(begin)) continue;
    for (let i = from; i < to; i += 1) out[i] = begin + (i - from) * each;
    return true;
  }
  return false;
}

/** A recorder's rate is a round number; the rows of a short log tell it within one row. */
const roundRate = (row: number, figures: number) => 1 / Number((1 / row).toPrecision(figures));

function evenFrom(held: Float64Array, from: number, to: number, row: number, step: number): number {
  let earliest = Number.NEGATIVE_INFINITY;
  let latest = Number.POSITIVE_INFINITY;
  for (let i = from; i < to; i += 1) {
    const since = (i - from) * row;
    earliest = Math.max(earliest, (held[i] ?? 0) - since);
    latest = Math.min(latest, (held[i] ?? 0) + step - since);
    // One microsecond, to which times are rounded.
    if (earliest > latest + 1e-6) return Number.NaN;
  }
  return earliest;
}

/** Over more rows no recorder's rate holds to a part of a row. */
const MOST_EVEN = 20_000;
