/** A person's word on a test that no reduction answers: briefed, flown, accepted, to be repeated, planned again. */
import type { Mark } from '../book/entry.ts';
import type { By } from '../book/journal.ts';
import type { Desk } from '../desk.ts';

export function markTest(desk: Desk, bookId: string, test: string, mark: Mark, note = '', by: By = {}): void {
  desk.shelf.open(bookId).record({ kind: 'test-marked', test, mark, note }, by);
}
