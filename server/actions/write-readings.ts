/** Write readings into the boxes of a card. Each writing is an entry of the journal: nothing typed is ever lost. */
import { entryFields } from '../../analysis/cards/index.ts';
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import { nextNumber } from '../book/current-state.ts';
import type { By } from '../book/journal.ts';
import { keptCard, type WrittenCard, writtenCard } from '../book/written-cards.ts';
import type { Desk } from '../desk.ts';
import { cardToWrite } from './card-to-write.ts';

export type Boxes = Readonly<Record<string, string>>;

/**
 * Begin to write into a card.
 * @param wanted the test, or one printed card by its hash
 * @param boxes text by key; empty texts are boxes left empty
 * @throws InputProblem `not-found`, or `bad-request` where the card has no such box
 */
export async function beginWriting(
  desk: Desk,
  bookId: string,
  wanted: { test: string; document?: string | undefined },
  boxes: Boxes,
  by: By = {},
): Promise<WrittenCard> {
  const { card, document, paper } = await cardToWrite(desk, bookId, wanted);
  const filled = Object.fromEntries(Object.entries(boxes).filter(([, text]) => text !== ''));
  checkKeys(entryFields(card).order, filled);
  const book = desk.shelf.open(bookId);
  const number = nextNumber(book.database, 'written');
  book.recordWith(
    (keep) => ({
      kind: 'readings-written',
      number,
      test: card.id,
      document: document ?? keep(JSON.stringify(card)),
      paper,
      boxes: filled,
    }),
    by,
  );
  return writtenCard(book, number);
}

/**
 * Write more, or write over. What did not change makes no entry.
 * @param boxes text by key; an empty text takes out what was there
 * @throws InputProblem `not-found`, or `bad-request` where the card has no such box
 */
export function writeReadings(desk: Desk, bookId: string, number: number, boxes: Boxes, by: By = {}): WrittenCard {
  const book = desk.shelf.open(bookId);
  const before = writtenCard(book, number);
  const changed = Object.fromEntries(
    Object.entries(boxes).filter(([key, text]) => text !== (before.boxes[key]?.text ?? '')),
  );
  checkKeys(entryFields(keptCard(book, before.document)).order, changed);
  if (Object.keys(changed).length === 0) return before;
  const { document, paper, card } = before;
  book.record({ kind: 'readings-written', number, test: card.id, document, paper, boxes: changed }, by);
  return writtenCard(book, number);
}

function checkKeys(known: readonly string[], boxes: Boxes): void {
  const keys = new Set(known);
  const unknown = Object.keys(boxes).filter((key) => !keys.has(key));
  if (unknown.length === 0) return;
  throw new InputProblem(unknown.map((field) => problem('bad-request', `The card has no box “${field}”.`, { field })));
}
