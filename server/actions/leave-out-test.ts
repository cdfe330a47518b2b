/** Leave a test out though the airplane needs it, with the reason and what stands in its place; or take it in again. */
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import type { By } from '../book/journal.ts';
import type { Desk } from '../desk.ts';
import { programOf } from './program-of.ts';

export interface LeavingOut {
  out: boolean;
  reason?: string | undefined;
  /** the limit that stays in its place */
  instead?: string | undefined;
}

/** @throws InputProblem `not-found` where no test of that name applies, `bad-request` where a reason is missing */
export async function leaveOutTest(
  desk: Desk,
  bookId: string,
  test: string,
  { out, reason = '', instead = '' }: LeavingOut,
  by: By = {},
): Promise<void> {
  const program = await programOf(desk, bookId);
  const known =
    program.order.includes(test) || program.notApplicable.some((one) => one.id === test && one.by === 'person');
  if (!known) throw new InputProblem([problem('not-found', `The program of this airplane has no test ${test}.`)]);
  if (out) {
    const missing = [
      ...(reason.trim() === '' ? [problem('bad-request', 'Say why it is left out.', { field: 'reason' })] : []),
      ...(instead.trim() === ''
        ? [problem('bad-request', 'Say which limit stays in its place.', { field: 'instead' })]
        : []),
    ];
    if (missing.length > 0) throw new InputProblem(missing);
  }
  desk.shelf.open(bookId).record({ kind: 'test-left-out', test, out, reason, instead }, by);
}
