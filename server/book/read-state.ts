/** The parts of a book's state that its tables and documents give by themselves. */
import { type Airplane, readAirplane } from '../../analysis/airplane/index.ts';
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import type { Book } from './book.ts';
import type { HoursLedger, Squawk, StoredAirplane, StoredLog } from './book-state.ts';
import * as rows from './current-state.ts';
import { understanding } from './documents.ts';

const descriptionIn = understanding((file) => ({ file, ...readAirplane(file) }));

/**
 * The airplane of a book at its newest revision.
 * @throws InputProblem `not-found` when the book holds none
 */
export function airplaneOf(book: Book): StoredAirplane {
  const all = rows.revisions(book.database);
  const newest = all.at(-1);
  if (!newest) throw new InputProblem([problem('not-found', 'This book holds no airplane yet.')]);
  const { file, airplane, problems } = descriptionIn(book.database, newest.document);
  return {
    // a form may change it before it is saved
    file: structuredClone(file),
    parsed: airplane,
    problems,
    revision: newest.number,
    revisions: all.map(({ number, at, who, why, undoes }) => ({ number, at, who, why, undoes })),
  };
}

/** The airplane as it was at a revision; undefined when there is no such revision. */
export function airplaneAt(book: Book, revision: number): { file: unknown; airplane: Airplane | null } | undefined {
  const row = rows.revisions(book.database).find((one) => one.number === revision);
  return row && descriptionIn(book.database, row.document);
}

/** The logs of a book, without those put away. */
export function storedLogs(book: Book): StoredLog[] {
  return kept(rows.logs(book.database)).map((row) => ({
    id: row.sha256,
    name: row.name,
    givenName: row.given_name,
    size: row.size,
    receivedAt: row.at,
    who: row.who,
    map: row.map,
    layout: row.layout,
  }));
}

/** The squawks of a book. */
export function storedSquawks(book: Book): Squawk[] {
  return kept(rows.squawks(book.database)).map((row) => ({
    number: row.number,
    text: row.text,
    open: row.open,
    at: row.at,
    who: row.who,
    how: row.how,
    settledAt: row.settled_at,
    settledBy: row.settled_by,
  }));
}

/** The hours of a book, with their sums. */
export function hoursLedger(book: Book): HoursLedger {
  const lines = kept(rows.hours(book.database));
  const total = (pick: (row: rows.HoursRow) => number) => lines.reduce((sum, row) => sum + pick(row), 0);
  return {
    entries: lines.map((row) => ({
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

function kept<T extends { away: boolean }>(list: T[]): T[] {
  return list.filter((one) => !one.away);
}
