/** One result of a book. */
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import type { StoredResult } from '../book/book-state.ts';
import { readBookState } from '../book/read-state.ts';
import type { Desk } from '../desk.ts';

/**
 * @throws InputProblem `not-found`
 */
export function resultOf(desk: Desk, bookId: string, number: number): StoredResult {
  const found = readBookState(desk.shelf.open(bookId)).results.find((one) => one.number === number);
  if (!found) throw new InputProblem([problem('not-found', `There is no result ${number} in this book.`)]);
  return found;
}
