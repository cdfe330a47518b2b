/** A person's word on a test that no reduction answers: briefed, flown, accepted, to be repeated, planned again. */
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import type { Mark } from '../book/entry.ts';
import type { By } from '../book/journal.ts';
import type { Desk } from '../desk.ts';
import { programOf } from './program-of.ts';

/** @throws InputProblem `not-found` where the program has no such test */
export async function markTest(
  desk: Desk,
  bookId: string,
  test: string,
  mark: Mark,
  note = '',
  by: By = {},
): Promise<void> {
  const program = await programOf(desk, bookId);
  if (!program.order.includes(test)) {
    throw new InputProblem([problem('not-found', `The program of this airplane has no test ${test}.`)]);
  }
  desk.shelf.open(bookId).record({ kind: 'test-marked', test, mark, note }, by);
}
