/** Keep a note of the cards that were printed, and from which revision of the airplane's description. */
import type { By } from '../book/journal.ts';
import { airplaneOf } from '../book/read-state.ts';
import type { Desk } from '../desk.ts';

export function notePrinting(desk: Desk, bookId: string, cards: string[], paper: string, by: By = {}): void {
  const book = desk.shelf.open(bookId);
  book.record({ kind: 'cards-printed', cards, paper, revision: airplaneOf(book).revision }, by);
}
