/** Keep the cards as they were printed, and from which revision of the airplane's description. */
import type { Card } from '../../analysis/cards/index.ts';
import type { By } from '../book/journal.ts';
import { airplaneOf } from '../book/read-state.ts';
import type { Desk } from '../desk.ts';

export function notePrinting(desk: Desk, bookId: string, cards: readonly Card[], paper: string, by: By = {}): void {
  const book = desk.shelf.open(bookId);
  const { revision } = airplaneOf(book);
  book.recordWith(
    (keep) => ({
      kind: 'cards-printed',
      cards: [...new Set(cards.map((card) => card.id))],
      paper,
      revision,
      documents: cards.map((card) => ({ test: card.id, document: keep(JSON.stringify(card)) })),
    }),
    by,
  );
}
