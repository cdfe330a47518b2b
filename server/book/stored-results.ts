/** The results of a book, each with its decision and whether it still stands. */
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import { resultSchema } from '../../analysis/results/index.ts';
import type { Book } from './book.ts';
import type { StoredResult } from './book-state.ts';
import { calibrationInForce } from './calibration-in-force.ts';
import * as rows from './current-state.ts';
import { understanding } from './documents.ts';
import { staleReasons } from './stale-reasons.ts';

const resultIn = understanding((json) => resultSchema.parse(json));

/** All results but those put away, oldest first. */
export async function storedResults(book: Book): Promise<StoredResult[]> {
  const names = logNames(book);
  const kept = rows.results(book.database).filter((row) => !row.away);
  const inForce = await calibrationInForce(book);
  const stored: StoredResult[] = [];
  for (const row of kept) stored.push(await storedResult(book, row, names, inForce));
  return stored;
}

/**
 * One result.
 * @throws InputProblem `not-found`
 */
export async function storedResultNumber(book: Book, number: number): Promise<StoredResult> {
  const row = rows.results(book.database).find((one) => one.number === number && !one.away);
  if (!row) throw new InputProblem([problem('not-found', `There is no result ${number} in this book.`)]);
  return storedResult(book, row, logNames(book), await calibrationInForce(book));
}

function logNames(book: Book): Map<string, string> {
  return new Map(rows.logs(book.database).map((row) => [row.sha256, row.name]));
}

async function storedResult(
  book: Book,
  row: rows.ResultRow,
  names: Map<string, string>,
  inForce: number | null,
): Promise<StoredResult> {
  const result = resultIn(book.database, row.document);
  const stale = row.decision === 'repeat' ? [] : await staleReasons(book, row, result, inForce);
  return {
    number: row.number,
    kind: row.reduction,
    at: row.at,
    who: row.who,
    status: stale.length > 0 ? 'stale' : row.decision,
    decision: row.decision,
    note: row.note,
    decidedAt: row.decided_at,
    decidedBy: row.decided_by,
    stale,
    input: row.input,
    logNames: row.input.logs.map((sha256) => names.get(sha256) ?? sha256),
    tests: row.input.tests,
    result,
  };
}
