/** Undo an entry of the journal where what is left still holds together. */

import { documentOf } from '../book/documents.ts';
import type { Entry } from '../book/entry.ts';
import { type By, entriesOn, entryNumber } from '../book/journal.ts';
import type { Desk } from '../desk.ts';
import { checkOwnTests } from './own-tests.ts';
import { undo } from './undo.ts';

/**
 * @param seq number of the entry
 * @returns the new entry
 * @throws InputProblem `not-found`, `not-undoable`, or `bad-order` where another own test waits for the one that goes
 */
export async function takeBack(desk: Desk, bookId: string, seq: number, by: By = {}): Promise<Entry> {
  const book = desk.shelf.open(bookId);
  const happening = entryNumber(book.database, seq)?.happening;
  if (happening?.kind === 'own-test-saved') {
    const before = entriesOn(book.database, `own-test:${happening.test}`).at(-2)?.happening;
    const document = before?.kind === 'own-test-saved' ? before.document : null;
    await checkOwnTests(book, happening.test, document === null ? null : documentOf(book.database, document));
  }
  return undo(desk, bookId, seq, by);
}
