/** A person's word on a result: accepted, to be repeated, or open again. */
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import type { StoredResult } from '../book/book-state.ts';
import type { Decision } from '../book/entry.ts';
import type { By } from '../book/journal.ts';
import type { Desk } from '../desk.ts';
import { resultOf } from './result-of.ts';

export interface ResultDecision {
  decision: Decision;
  note?: string;
}

/**
 * @throws InputProblem when a refused result is to be accepted: it holds nothing to accept
 */
export async function decideResult(
  desk: Desk,
  bookId: string,
  number: number,
  { decision, note = '' }: ResultDecision,
  by: By = {},
): Promise<StoredResult> {
  const before = await resultOf(desk, bookId, number);
  if (decision === 'accepted' && before.result.status === 'refused') {
    throw new InputProblem([
      problem('bad-request', `Result ${number} was refused, so there is nothing in it to accept.`, {
        field: 'decision',
      }),
    ]);
  }
  desk.shelf.open(bookId).record({ kind: 'result-decided', number, decision, note }, by);
  return resultOf(desk, bookId, number);
}
