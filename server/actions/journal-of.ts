/** A stretch of a book's journal, newest first. */
import type { Entry } from '../book/entry.ts';
import { journalTail } from '../book/journal.ts';
import type { Desk } from '../desk.ts';

export function journalOf(desk: Desk, bookId: string, count: number, before?: number): Entry[] {
  return journalTail(desk.shelf.open(bookId).database, count, before);
}
