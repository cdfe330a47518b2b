/** A squawk: something wrong with the airplane, written down when it is found. */
import { nextNumber } from '../book/current-state.ts';
import type { By } from '../book/journal.ts';
import type { Desk } from '../desk.ts';

/** @returns its number */
export function openSquawk(desk: Desk, bookId: string, text: string, by: By = {}): number {
  const book = desk.shelf.open(bookId);
  const number = nextNumber(book.database, 'squawk');
  book.record({ kind: 'squawk-opened', number, text }, by);
  return number;
}
