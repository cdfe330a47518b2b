/** One log of a book: what is known of it, and where its bytes lie. */
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import type { StoredLog } from '../book/book-state.ts';
import { rawLogPath } from '../book/raw-logs.ts';
import { storedLogs } from '../book/read-state.ts';
import type { Desk } from '../desk.ts';

/** @throws InputProblem `not-found` */
export function logOf(desk: Desk, bookId: string, logId: string): { log: StoredLog; path: string } {
  const book = desk.shelf.open(bookId);
  const log = storedLogs(book).find((one) => one.id === logId);
  if (!log) throw new InputProblem([problem('not-found', 'There is no such log in this book.')]);
  return { log, path: rawLogPath(book.folder, log.id) };
}
