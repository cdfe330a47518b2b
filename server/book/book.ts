/**
 * One airplane's whole record: a folder with one database, its raw logs and a cache. Held by one process at a time;
 * moving the folder moves everything.
 */
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import { type Database, DatabaseInUse, openDatabase } from './database.ts';
import { keepDocument } from './documents.ts';
import type { Entry, Happening } from './entry.ts';
import { append, type By } from './journal.ts';
import { migrate, NewerBook } from './migrate.ts';
import { sweepArrivals } from './raw-logs.ts';

export interface Book {
  /** name of its folder, which is its address in the service */
  id: string;
  folder: string;
  database: Database;
  /** append what happened, with the state it changes, in one transaction */
  record(happening: Happening, by?: By): Entry;
  /** keep documents and record what names them, in one transaction */
  recordWith(make: (keep: (json: string) => string) => Happening, by?: By): Entry;
  close(): void;
}

/** Folder names a book may have: nothing a person typed ever becomes one. */
export const BOOK_ID = /^[a-z0-9][a-z0-9-]{0,39}$/;

const DATABASE = 'book.db';
const LOCK = 'book.lock';

/** Whether a folder holds a book. */
export function isBook(folder: string): boolean {
  return existsSync(join(folder, DATABASE));
}

/**
 * Open the book in a folder, made when there is none.
 * @param folder its place
 * @param id its name in the service
 * @param now the clock
 * @throws InputProblem `book-in-use` when another process has it open, `newer-book` when it cannot be understood
 */
export function openBookFolder(folder: string, id: string, now: () => Date): Book {
  mkdirSync(join(folder, 'logs'), { recursive: true });
  const file = join(folder, DATABASE);
  const database = openHeld(file, folder);
  try {
    migrate(database, file);
  } catch (error) {
    database.close();
    if (!(error instanceof NewerBook)) throw error;
    throw new InputProblem([problem('newer-book', 'This book was written by a newer version of this program.')]);
  }
  // The database's own lock is what holds; the file beside it only tells the other process whom to ask.
  writeFileSync(join(folder, LOCK), `${process.pid}\n`);
  sweepArrivals(folder);

  const at = () => now().toISOString();
  return {
    id,
    folder,
    database,
    record: (happening, by) => append(database, happening, at(), by),
    recordWith: (make, by) =>
      database.transaction(() =>
        append(
          database,
          make((json) => keepDocument(database, json)),
          at(),
          by,
        ),
      ),
    close: () => {
      database.close();
      rmSync(join(folder, LOCK), { force: true });
    },
  };
}

function openHeld(file: string, folder: string): Database {
  try {
    return openDatabase(file);
  } catch (error) {
    if (!(error instanceof DatabaseInUse)) throw error;
    throw new InputProblem([problem('book-in-use', `This book is open in another process${holder(folder)}.`)]);
  }
}

function holder(folder: string): string {
  try {
    const pid = readFileSync(join(folder, LOCK), 'utf8').trim();
    return /^\d+$/.test(pid) ? ` (number ${pid})` : '';
  } catch {
    return '';
  }
}
