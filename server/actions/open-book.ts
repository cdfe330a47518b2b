/** Everything about a book, as pages and scripts see it. */
import type { BookState } from '../book/book-state.ts';
import { identity, marks, printings } from '../book/current-state.ts';
import { journalTail } from '../book/journal.ts';
import { airplaneOf, hoursLedger, storedLogs, storedSquawks } from '../book/read-state.ts';
import { savedMaps } from '../book/saved-maps.ts';
import { storedResults } from '../book/stored-results.ts';
import { testStatuses } from '../book/test-status.ts';
import type { Desk } from '../desk.ts';
import { planFor } from './program-of.ts';

/** Entries of the journal that come with the state. */
const TAIL = 50;

/** @throws InputProblem `not-found`, `book-in-use` */
export async function openBook(desk: Desk, bookId: string): Promise<BookState> {
  const book = desk.shelf.open(bookId);
  const airplane = airplaneOf(book);
  const results = await storedResults(book);
  const printed = printings(book.database).map(({ cards, paper, revision, at }) => ({ cards, paper, revision, at }));
  const evidence = { results, marks: marks(book.database), printed };
  return {
    id: book.id,
    ...identity(book.database),
    airplane,
    logs: storedLogs(book),
    maps: savedMaps(book),
    results,
    squawks: storedSquawks(book),
    hours: hoursLedger(book),
    printed,
    testStatus: airplane.parsed ? testStatuses(await planFor(airplane.parsed), evidence) : [],
    journal: journalTail(book.database, TAIL),
  };
}
