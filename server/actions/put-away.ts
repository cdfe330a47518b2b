/** Put a log, a result, a squawk or a line of hours out of sight, or bring it back. Nothing is ever deleted. */
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import { results } from '../book/current-state.ts';
import { type By, entriesOn } from '../book/journal.ts';
import type { Desk } from '../desk.ts';

export interface Thing {
  what: 'log' | 'result' | 'squawk' | 'hours' | 'written';
  id: string | number;
}

/**
 * @throws InputProblem `not-found`, or `not-undoable` for an accepted result
 */
export function putAway(desk: Desk, bookId: string, thing: Thing, by: By = {}): void {
  const book = desk.shelf.open(bookId);
  const subject = subjectOfThing(desk, bookId, thing);
  const accepted =
    thing.what === 'result' &&
    results(book.database).some((one) => one.number === Number(thing.id) && one.decision === 'accepted');
  if (accepted) {
    throw new InputProblem([problem('not-undoable', `Result ${thing.id} is accepted; take that back first.`)]);
  }
  book.record({ kind: 'put-away', subject }, by);
}

/** @throws InputProblem `not-found` */
export function bringBack(desk: Desk, bookId: string, thing: Thing, by: By = {}): void {
  const subject = subjectOfThing(desk, bookId, thing);
  desk.shelf.open(bookId).record({ kind: 'brought-back', subject }, by);
}

function subjectOfThing(desk: Desk, bookId: string, { what, id }: Thing): string {
  const subject = `${what}:${id}`;
  if (entriesOn(desk.shelf.open(bookId).database, subject).length === 0) {
    throw new InputProblem([problem('not-found', `There is no ${what} ${id} in this book.`)]);
  }
  return subject;
}
