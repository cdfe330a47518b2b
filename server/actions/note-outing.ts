/** What came of an outing: it was flown, it was a no-go, the day was lost. */
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import type { By } from '../book/journal.ts';
import type { OutingNote } from '../book/plan-entries.ts';
import { nextNoteNumber } from '../book/plan-state.ts';
import type { Desk } from '../desk.ts';
import { openBookWithPlan } from './open-book.ts';

/**
 * Note it; where the outing was done, its tests that had no word yet are marked as flown.
 * @returns number of the note
 * @throws InputProblem `not-found` where the program has no such outing
 */
export async function noteOuting(
  desk: Desk,
  bookId: string,
  outingNumber: number,
  { what, note = '' }: { what: OutingNote; note?: string | undefined },
  by: By = {},
): Promise<number> {
  const { state, plan } = await openBookWithPlan(desk, bookId);
  const outing = plan?.program.outings[outingNumber - 1];
  if (!outing) throw new InputProblem([problem('not-found', `The program has no outing ${outingNumber}.`)]);
  const book = desk.shelf.open(bookId);
  const states = new Map(state.testStatus.map((one) => [one.test, one.status]));
  return book.database.transaction(() => {
    const number = nextNoteNumber(book.database);
    const parts = outing.parts.map(({ test, part }) => ({ test, part }));
    book.record({ kind: 'outing-noted', number, what, outing: outing.title.slice(0, 400), parts, note }, by);
    if (what !== 'done') return number;
    for (const test of outing.tests) {
      if (!['planned', 'briefed', 'repeat', 'stale'].includes(states.get(test) ?? 'planned')) continue;
      book.record({ kind: 'test-marked', test, mark: 'flown', note: `On “${outing.title}”.`.slice(0, 4000) }, by);
    }
    return number;
  });
}
