/** One result of a book. */
import type { StoredResult } from '../book/book-state.ts';
import { storedResultNumber } from '../book/stored-results.ts';
import type { Desk } from '../desk.ts';

/** @throws InputProblem `not-found` */
export async function resultOf(desk: Desk, bookId: string, number: number): Promise<StoredResult> {
  return storedResultNumber(desk.shelf.open(bookId), number);
}
