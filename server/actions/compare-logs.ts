/** Two logs of a book with their clocks beside each other, and the shift that a person set or takes back. */
import type { ComparedClocks } from '../../analysis/logs/align/compare-clocks.ts';
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import type { StoredLog } from '../book/book-state.ts';
import { handShifts } from '../book/current-state.ts';
import type { By } from '../book/journal.ts';
import type { Desk } from '../desk.ts';
import { logOf } from './log-of.ts';
import { readStoredLog } from './read-stored-log.ts';
import { type Trace, tracesOf } from './traces-of.ts';

export interface ComparedLogs {
  first: StoredLog;
  other: StoredLog;
  compared: ComparedClocks;
  /** the two traces of each signal, in the order of the signals, each on its own log's clock */
  traces: { first: Trace; other: Trace }[];
  /** shift set by hand, s, or null */
  byHand: number | null;
  /** length of both logs, s */
  seconds: { first: number; other: number };
}

/** Enough for looking closely at a part of a long log. */
const WIDTH = 3000;

/** @throws InputProblem `not-found`, or that one of the logs holds no table */
export async function compareLogs(desk: Desk, bookId: string, first: string, other: string): Promise<ComparedLogs> {
  const { compareClocks } = await import('../../analysis/logs/align/compare-clocks.ts');
  const [a, b] = [await readStoredLog(desk, bookId, first), await readStoredLog(desk, bookId, other)];
  const [one, two] = [a.outcome.table, b.outcome.table];
  if (!one || !two) {
    const { log, outcome } = one ? b : a;
    throw new InputProblem([
      ...outcome.problems,
      problem('not-a-log', `${log.name} could not be read as a table of readings, so it has no clock to compare.`),
    ]);
  }
  const compared = compareClocks(one, two);
  const traceOf = async (log: string, column: string) =>
    (await tracesOf(desk, bookId, log, { columns: [column], width: WIDTH }))[0];
  const traces: ComparedLogs['traces'] = [];
  for (const { columns } of compared.signals) {
    const [x, y] = [await traceOf(first, columns.first), await traceOf(other, columns.other)];
    if (x && y) traces.push({ first: x, other: y });
  }
  return {
    first: a.log,
    other: b.log,
    compared,
    traces,
    byHand: handShiftsFor(desk, bookId, [first, other])[other] ?? null,
    seconds: { first: one.time.durationSeconds, other: two.time.durationSeconds },
  };
}

/**
 * Shifts that a person set for logs taken together; the first sets the clock.
 * @returns s by log, the first left out; a pair set the other way round counts as well
 */
export function handShiftsFor(desk: Desk, bookId: string, logs: readonly string[]): Record<string, number> {
  const [first, ...others] = logs;
  const set = handShifts(desk.shelf.open(bookId).database);
  return Object.fromEntries(
    others.flatMap((log): [string, number][] => {
      // The newest first, whichever way round it was set.
      const pair = set.find(
        (one) => (one.log === log && one.first === first) || (one.log === first && one.first === log),
      );
      return pair ? [[log, pair.log === log ? pair.seconds : -pair.seconds]] : [];
    }),
  );
}

/**
 * Keep a shift set by hand, or take it back.
 * @param seconds s to add to the other log's own time; null: as the signals tell
 * @throws InputProblem `not-found`
 */
export function keepShift(
  desk: Desk,
  bookId: string,
  { first, other }: { first: string; other: string },
  seconds: number | null,
  by: By = {},
): void {
  logOf(desk, bookId, first);
  logOf(desk, bookId, other);
  desk.shelf.open(bookId).record({ kind: 'log-aligned', log: other, first, seconds }, by);
}
