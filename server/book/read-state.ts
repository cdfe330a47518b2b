/** The whole state of a book, from its tables and the documents they name. */
import { readAirplane } from '../../analysis/airplane/index.ts';
import { reductionOf } from '../../analysis/reductions/index.ts';
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import { type Result, resultSchema } from '../../analysis/results/index.ts';
import type { Book } from './book.ts';
import type { BookState, HoursLedger, SavedMap, StoredAirplane, StoredLog, StoredResult } from './book-state.ts';
import * as rows from './current-state.ts';
import { documentOf } from './documents.ts';
import { journalTail } from './journal.ts';
import { changedPaths } from './staleness.ts';

const TAIL = 50;

/**
 * Everything about a book but what needs the program.
 * @param book an open book
 */
export function readBookState(book: Book): Omit<BookState, 'testStatus'> {
  const { database } = book;
  const airplane = airplaneOf(book);
  const kept = <T extends { away: boolean }>(list: T[]) => list.filter((one) => !one.away);
  const logRows = rows.logs(database);
  const logNames = new Map(logRows.map((row) => [row.sha256, row.name]));
  return {
    id: book.id,
    ...rows.identity(database),
    airplane,
    logs: kept(logRows).map(storedLog),
    maps: savedMaps(logRows),
    results: kept(rows.results(database)).map((row) => storedResult(book, row, logNames, airplane)),
    squawks: kept(rows.squawks(database)).map((row) => ({
      number: row.number,
      text: row.text,
      open: row.open,
      at: row.at,
      who: row.who,
      how: row.how,
      settledAt: row.settled_at,
      settledBy: row.settled_by,
    })),
    hours: ledger(kept(rows.hours(database))),
    printed: rows.printings(database).map(({ cards, paper, revision, at }) => ({ cards, paper, revision, at })),
    journal: journalTail(database, TAIL),
  };
}

/** The airplane of a book at its newest revision. */
export function airplaneOf(book: Book): StoredAirplane {
  const all = rows.revisions(book.database);
  const newest = all.at(-1);
  if (!newest) throw new InputProblem([problem('not-found', 'This book holds no airplane yet.')]);
  const file = documentOf(book.database, newest.document);
  const { airplane, problems } = readAirplane(file);
  return {
    file,
    parsed: airplane,
    problems,
    revision: newest.number,
    revisions: all.map(({ number, at, who, why, undoes }) => ({ number, at, who, why, undoes })),
  };
}

/** The airplane's description as it was at a revision; undefined when there is no such revision. */
export function airplaneAt(book: Book, revision: number): unknown {
  const row = rows.revisions(book.database).find((one) => one.number === revision);
  return row && documentOf(book.database, row.document);
}

function storedLog(row: rows.LogRow): StoredLog {
  return {
    id: row.sha256,
    name: row.name,
    size: row.size,
    receivedAt: row.at,
    who: row.who,
    map: row.map,
    layout: row.layout,
  };
}

function savedMaps(logRows: rows.LogRow[]): SavedMap[] {
  const byLayout = new Map<string, SavedMap>();
  for (const row of [...logRows].sort((a, b) => (a.mapped ?? 0) - (b.mapped ?? 0))) {
    if (row.layout === null || row.map === null) continue;
    byLayout.set(row.layout, { layout: row.layout, map: row.map, log: row.sha256, logName: row.name });
  }
  return [...byLayout.values()];
}

function storedResult(
  book: Book,
  row: rows.ResultRow,
  logNames: Map<string, string>,
  airplane: StoredAirplane,
): StoredResult {
  const result: Result = resultSchema.parse(documentOf(book.database, row.document));
  const stale = row.decision === 'repeat' ? [] : staleReasons(book, row, result, airplane);
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
    logNames: row.input.logs.map((sha256) => logNames.get(sha256) ?? sha256),
    tests: row.input.tests,
    result,
  };
}

function staleReasons(book: Book, row: rows.ResultRow, result: Result, airplane: StoredAirplane): string[] {
  const reasons: string[] = [];
  const { configurationRevision: revision, methodVersion } = result.provenance;
  const newest = reductionOf(row.reduction)?.note.versions[0];
  if (newest && newest.version !== methodVersion) {
    reasons.push(`The method is now version ${newest.version}: ${newest.change}`);
  }
  if (revision !== null && revision !== airplane.revision) {
    const before = readAirplane(airplaneAt(book, revision)).airplane;
    const changed = changedPaths(row.reads, before, airplane.parsed);
    reasons.push(...changed.map((path) => `The airplane's ${path} has changed since revision ${revision}.`));
  }
  const calibration = row.input.calibration;
  if (calibration !== undefined) {
    const used = rows.results(book.database).find((one) => one.number === calibration);
    if (used?.decision !== 'accepted') {
      reasons.push(`Result ${calibration}, the airspeed calibration it used, is no longer accepted.`);
    }
  }
  return reasons;
}

function ledger(entries: rows.HoursRow[]): HoursLedger {
  const total = (pick: (row: rows.HoursRow) => number) => entries.reduce((sum, row) => sum + pick(row), 0);
  return {
    entries: entries.map((row) => ({
      number: row.number,
      date: row.date,
      outing: row.outing,
      flightSeconds: row.flight_seconds,
      engineSeconds: row.engine_seconds,
      landings: row.landings,
      note: row.note,
      at: row.at,
      who: row.who,
    })),
    flightSeconds: total((row) => row.flight_seconds),
    engineSeconds: total((row) => row.engine_seconds),
    landings: total((row) => row.landings),
  };
}
