/** Where a column of numbers stands still, told of each stretch of it as it is read, and joined afterwards. */

/** Rows of a column, both ends included. */
interface Rows {
  from: number;
  to: number;
}

/** Runs of equal numbers of one stretch of rows. */
export interface EqualRuns {
  /** rows of the run it starts with, and the first row of the run it ends with */
  head: number;
  tail: number;
  /** the longest runs between the two: all of `least` rows and more */
  runs: Rows[];
  least: number;
}

/** Fewer equal rows are no standing still. */
export const LONG_RUN_ROWS = 10;
const MOST_LONG_RUNS = 1000;

type Numbers = Int16Array | Int32Array | Float64Array;

/**
 * The runs of a stretch.
 * @param values one a row, any unit
 * @param gap what stands for no reading among them, number
 * @returns its runs, rows counted within it
 */
export function equalRuns(values: Numbers, gap: number): EqualRuns {
  let head = Math.min(1, values.length);
  while (head < values.length && values[head] === values[0]) head += 1;
  let tail = Math.max(0, values.length - 1);
  while (tail > head && values[tail - 1] === values[values.length - 1]) tail -= 1;
  const found: EqualRuns = { head, tail: Math.max(tail, head), runs: [], least: LONG_RUN_ROWS };
  findRuns(values, gap, found);
  return found;
}

/** A run of so many rows holds two neighbours of every half as many rows: only those are compared, the rest skipped. */
function findRuns(values: Numbers, gap: number, found: EqualRuns): void {
  const { head, tail } = found;
  let next = head;
  while (next < tail) {
    const stride = found.least >> 1;
    const within = tail - stride;
    if (values instanceof Float64Array) while (next < within && values[next] !== values[next + stride]) next += stride;
    else {
      // Four of them at once: two that are equal by chance would mislead the processor every other time.
      const middle = stride >> 1;
      while (next < within) {
        const value = values[next] ?? 0;
        const differ = value ^ (values[next + 1] ?? 0);
        if ((differ | (value ^ (values[next + middle] ?? 0)) | (value ^ (values[next + stride] ?? 0))) === 0) break;
        next += stride;
      }
    }
    if (next + stride >= tail) return;
    const value = values[next] ?? gap;
    let from = next;
    while (from > head && values[from - 1] === value) from -= 1;
    let end = next + 1;
    while (end < tail && values[end] === value) end += 1;
    next = end;
    if (value !== gap) keepRun(found, { from, to: end - 1 });
  }
}

/** So many at most are kept: the longest. */
function keepRun(found: Pick<EqualRuns, 'runs' | 'least'>, run: Rows): void {
  if (run.to - run.from + 1 < found.least) return;
  found.runs.push(run);
  while (found.runs.length > MOST_LONG_RUNS) {
    found.least *= 2;
    found.runs = found.runs.filter(({ from, to }) => to - from + 1 >= found.least);
  }
}

/**
 * The longest runs of a column whose stretches follow each other.
 * @param stretches runs, rows and the numbers at both ends of each; NaN for none
 * @returns all runs of LONG_RUN_ROWS and more, or the longest thousand
 */
export function joinRuns(
  stretches: readonly { equal: EqualRuns; rows: number; first: number; last: number }[],
): Rows[] {
  const least = Math.max(LONG_RUN_ROWS, ...stretches.map(({ equal }) => equal.least));
  const all: Pick<EqualRuns, 'runs' | 'least'> = { runs: [], least };
  let open = { from: 0, rows: 0, value: Number.NaN };
  const close = () => {
    if (!Number.isNaN(open.value)) keepRun(all, { from: open.from, to: open.from + open.rows - 1 });
  };
  let row = 0;
  for (const { equal, rows, first, last } of stretches) {
    if (rows === 0) continue;
    if (first === open.value) open.rows += equal.head;
    else {
      close();
      open = { from: row, rows: equal.head, value: first };
    }
    if (equal.head < rows) {
      close();
      for (const { from, to } of equal.runs) keepRun(all, { from: row + from, to: row + to });
      open = { from: row + equal.tail, rows: rows - equal.tail, value: last };
    }
    row += rows;
  }
  close();
  return all.runs;
}
