/** The books there are, each with the name of its airplane. */
import { InputProblem } from '../../analysis/remarks/index.ts';
import type { BookSummary } from '../book/book-state.ts';
import { identity } from '../book/current-state.ts';
import { airplaneOf } from '../book/read-state.ts';
import type { Desk } from '../desk.ts';

/** All books; one that cannot be opened now is listed with the reason. */
export function listBooks(desk: Desk): BookSummary[] {
  return desk.shelf.ids().map((id) => summaryOf(desk, id));
}

function summaryOf(desk: Desk, id: string): BookSummary {
  try {
    const book = desk.shelf.open(id);
    const { parsed } = airplaneOf(book);
    const { demo } = identity(book.database);
    return { id, name: parsed?.name ?? id, registration: parsed?.registration ?? '', demo, problems: [] };
  } catch (error) {
    if (!(error instanceof InputProblem)) throw error;
    return { id, name: id, registration: '', demo: false, problems: [...error.problems] };
  }
}
