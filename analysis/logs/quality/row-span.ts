/** Stretches of rows, and how they are told to a person. */
import { type Flag, flag } from '../../remarks/index.ts';
import type { LogChannel, LogTable } from '../table.ts';

/** Rows of a table, both ends included. */
export interface RowSpan {
  from: number;
  to: number;
}

/** More than this many remarks of one kind hide each other. */
const MOST_FLAGS = 20;

/**
 * Stretches of neighbouring rows that pass a test.
 * @param rows count of rows
 * @param passes the test of one row
 * @returns the stretches, rising
 */
export function spansWhere(rows: number, passes: (row: number) => boolean): RowSpan[] {
  const spans: RowSpan[] = [];
  let from = -1;
  for (let i = 0; i <= rows; i += 1) {
    if (i < rows && passes(i)) {
      if (from < 0) from = i;
    } else if (from >= 0) {
      spans.push({ from, to: i - 1 });
      from = -1;
    }
  }
  return spans;
}

/**
 * Stretches of equal numbers, single ones included; missing values belong to none.
 * @param values one a row, any one unit
 * @returns the stretches, rising
 */
export function equalRuns(values: Float64Array): RowSpan[] {
  const runs: RowSpan[] = [];
  let from = 0;
  for (let i = 1; i <= values.length; i += 1) {
    const held = values[from];
    if (i < values.length && values[i] === held) continue;
    if (held !== undefined && Number.isFinite(held)) runs.push({ from, to: i - 1 });
    from = i;
  }
  return runs;
}

/**
 * Adds one flag a stretch, and one for the rest together when there are too many to read.
 * @param table the log, table
 * @param channel the channel that is flagged, object
 * @param kind flag code, text
 * @param spans stretches of rows
 * @param what says of one stretch what is wrong, text
 */
export function flagSpans(
  table: LogTable,
  channel: LogChannel,
  kind: Flag['kind'],
  spans: readonly RowSpan[],
  what: (span: RowSpan) => string,
): void {
  const t = table.time.seconds;
  const at = (row: number) => t[row] ?? 0;
  for (const span of spans.slice(0, MOST_FLAGS)) {
    const [fromSeconds, toSeconds] = [at(span.from), at(span.to)];
    channel.flags.push(
      flag(kind, `${channel.column}: ${what(span)} (${spanText(fromSeconds, toSeconds)}).`, { fromSeconds, toSeconds }),
    );
  }
  const rest = spans.slice(MOST_FLAGS);
  const [first, last] = [rest[0], rest.at(-1)];
  if (!first || !last) return;
  const [fromSeconds, toSeconds] = [at(first.from), at(last.to)];
  const rows = rest.reduce((sum, span) => sum + span.to - span.from + 1, 0);
  channel.flags.push(
    flag(
      kind,
      `${channel.column}: ${rest.length} more such stretches, ${rows} rows in all (${spanText(fromSeconds, toSeconds)}).`,
      { fromSeconds, toSeconds },
    ),
  );
}

/**
 * Marks the rows of the stretches as missing.
 * @param channel the channel, changed in place
 * @param spans stretches of rows
 */
export function blank(channel: LogChannel, spans: readonly RowSpan[]): void {
  for (const { from, to } of spans) channel.values.fill(Number.NaN, from, to + 1);
}

function spanText(from: number, to: number): string {
  return from === to ? `at ${from.toFixed(1)} s` : `${from.toFixed(1)} s to ${to.toFixed(1)} s`;
}
