/** Hours of an outing, as the person read them. */
import type { HoursEntry } from '../book/book-state.ts';
import { nextNumber } from '../book/current-state.ts';
import type { By } from '../book/journal.ts';
import type { Desk } from '../desk.ts';

export type Hours = Pick<HoursEntry, 'date' | 'outing' | 'flightSeconds' | 'engineSeconds' | 'landings' | 'note'>;

/** @returns number of the line */
export function logHours(desk: Desk, bookId: string, line: Hours, by: By = {}): number {
  const book = desk.shelf.open(bookId);
  const number = nextNumber(book.database, 'hours');
  book.record({ kind: 'hours-logged', number, ...line }, by);
  return number;
}
