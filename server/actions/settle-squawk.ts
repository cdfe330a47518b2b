/** Settle a squawk with what was done about it, or open it again. */
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import { squawks } from '../book/current-state.ts';
import type { By } from '../book/journal.ts';
import type { Desk } from '../desk.ts';

export interface Settling {
  open: boolean;
  how: string;
}

/** @throws InputProblem `not-found` */
export function settleSquawk(desk: Desk, bookId: string, number: number, { open, how }: Settling, by: By = {}): void {
  const book = desk.shelf.open(bookId);
  const there = squawks(book.database).some((one) => one.number === number && !one.away);
  if (!there) throw new InputProblem([problem('not-found', `There is no squawk ${number} in this book.`)]);
  book.record({ kind: 'squawk-settled', number, open, how }, by);
}
