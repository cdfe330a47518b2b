/** An airplane's description as it was saved, at a revision or now. */
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import { airplaneAt, airplaneOf } from '../book/read-state.ts';
import type { Desk } from '../desk.ts';

/** @throws InputProblem `not-found` */
export function revisionFile(desk: Desk, bookId: string, revision?: number): unknown {
  const book = desk.shelf.open(bookId);
  if (revision === undefined) return airplaneOf(book).file;
  const stored = airplaneAt(book, revision);
  if (!stored) throw new InputProblem([problem('not-found', `There is no revision ${revision}.`)]);
  return stored.file;
}
