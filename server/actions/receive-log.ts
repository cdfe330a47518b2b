/** Receive a log: to the disk as it comes, hashed on the way, kept byte for byte. */
import type { Readable } from 'node:stream';
import { shownName } from '../../analysis/logs/shown-name.ts';
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import type { StoredLog } from '../book/book-state.ts';
import { logs } from '../book/current-state.ts';
import type { By } from '../book/journal.ts';
import { keepRawLog, TooManyBytes } from '../book/raw-logs.ts';
import { storedLogs } from '../book/read-state.ts';
import type { Desk } from '../desk.ts';
import { unusedName } from './unused-name.ts';

export interface ReceivedLog {
  log: StoredLog;
  /** the same bytes were in the book already, under the name shown */
  known: boolean;
}

/**
 * @param stream the bytes of the file
 * @param givenName its name as sent; only a cleaned part of it is ever shown, and no path is made of it
 * @param watch told the bytes so far; may throw to stop
 * @throws InputProblem `too-large`
 */
export async function receiveLog(
  desk: Desk,
  bookId: string,
  stream: Readable,
  givenName: string,
  by: By = {},
  watch: (bytes: number) => void = () => {},
): Promise<ReceivedLog> {
  const book = desk.shelf.open(bookId);
  const limit = desk.settings.uploadLimitBytes;
  const { sha256, size } = await keepRawLog(book.folder, stream, limit, watch).catch((error: unknown) => {
    if (!(error instanceof TooManyBytes)) throw error;
    throw new InputProblem([
      problem('too-large', `The file is larger than ${limit} bytes.`, { file: shownName(givenName).name }),
    ]);
  });
  const rows = logs(book.database);
  const known = rows.find((row) => row.sha256 === sha256);
  if (!known) {
    const name = unusedName(shownName(givenName).name, new Set(rows.map((row) => row.name)));
    book.record({ kind: 'log-received', log: sha256, name, givenName, size }, by);
  } else if (known.away) {
    book.record({ kind: 'brought-back', subject: `log:${sha256}` }, by);
  }
  const log = storedLogs(book).find((one) => one.id === sha256);
  if (!log) throw new Error(`the log ${sha256} was recorded and is not there`);
  return { log, known: known !== undefined };
}
