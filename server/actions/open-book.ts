/** Everything about a book, as pages and scripts see it. */
import type { BookState } from '../book/book-state.ts';
import { identity, marks, printings } from '../book/current-state.ts';
import { journalTail } from '../book/journal.ts';
import { leftOutRows, outingNotes } from '../book/plan-state.ts';
import { airplaneOf, hoursLedger, storedLogs, storedSquawks } from '../book/read-state.ts';
import { savedMaps } from '../book/saved-maps.ts';
import { storedResults } from '../book/stored-results.ts';
import { testStatuses } from '../book/test-status.ts';
import type { Desk } from '../desk.ts';
import { type BookPlan, planOfBook } from './book-plan.ts';

/** Entries of the journal that come with the state. */
const TAIL = 50;

export interface OpenBook {
  state: BookState;
  /** null when the stored description no longer fits the schema */
  plan: BookPlan | null;
}

/** @throws InputProblem `not-found`, `book-in-use` */
export async function openBook(desk: Desk, bookId: string): Promise<BookState> {
  return (await openBookWithPlan(desk, bookId)).state;
}

/** The same with the program as it stands. */
export async function openBookWithPlan(desk: Desk, bookId: string): Promise<OpenBook> {
  const book = desk.shelf.open(bookId);
  const { database } = book;
  const airplane = airplaneOf(book);
  const results = await storedResults(book);
  const printed = printings(database).map(({ cards, paper, revision, at }) => ({ cards, paper, revision, at }));
  const evidence = { results, marks: marks(database), printed };
  const plan = airplane.parsed ? await planOfBook(book, results) : null;
  const state = {
    id: book.id,
    ...identity(database),
    airplane,
    logs: storedLogs(book),
    maps: savedMaps(book),
    results,
    squawks: storedSquawks(book),
    hours: hoursLedger(book),
    printed,
    outingNotes: outingNotes(database)
      .filter((row) => !row.away)
      .map(({ away: _away, entry: _entry, ...note }) => note),
    leftOut: leftOutRows(database)
      .filter((row) => row.out)
      .map(({ out: _out, ...left }) => left),
    testStatus: plan ? testStatuses(plan.program, evidence) : [],
    journal: journalTail(database, TAIL),
  };
  return { state, plan };
}
