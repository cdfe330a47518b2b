/** A new book, opened with an airplane's description. */
import { randomBytes } from 'node:crypto';
import { readAirplane } from '../../analysis/airplane/index.ts';
import { InputProblem } from '../../analysis/remarks/index.ts';
import type { By } from '../book/journal.ts';
import type { Desk } from '../desk.ts';

export interface NewBook {
  /** an airplane's description, as in AIRPLANE.json */
  airplane: unknown;
  demo?: boolean;
  /** folder name; only our own demo books bring one */
  id?: string;
}

/**
 * Make a book.
 * @returns its id
 * @throws InputProblem when the description does not fit; nothing is made then
 */
export function createBook(desk: Desk, { airplane, demo = false, id }: NewBook, by: By = {}): string {
  const { problems } = readAirplane(airplane);
  if (problems.length > 0) throw new InputProblem(problems);
  const book = desk.shelf.make(id);
  book.database.transaction(() => {
    book.record({ kind: 'book-created', uid: randomBytes(12).toString('hex'), demo }, by);
    book.recordWith((keep) => ({ kind: 'airplane-saved', document: keep(JSON.stringify(airplane)) }), by);
  });
  return book.id;
}
