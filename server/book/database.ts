/**
 * The one file that knows the database library. SQLite through libsql: one file, no write-ahead log left behind,
 * every commit on the disk before it is acknowledged, one process at a time.
 */
import { createRequire } from 'node:module';
import type Libsql from 'libsql';
import * as z from 'zod';

export type Value = string | number | null;

export interface Database {
  run(sql: string, values?: readonly Value[]): void;
  /** rows as the database gives them; the caller's schema says what they are */
  all<T extends z.ZodType>(row: T, sql: string, values?: readonly Value[]): z.output<T>[];
  first<T extends z.ZodType>(row: T, sql: string, values?: readonly Value[]): z.output<T> | undefined;
  exec(sql: string): void;
  /** all of it or nothing; an error inside rolls back and goes on up */
  transaction<R>(work: () => R): R;
  close(): void;
}

/** Another process holds the database. */
export class DatabaseInUse extends Error {}

const load = createRequire(import.meta.url);

/**
 * Open a database file, made when absent.
 * @param path file, or `:memory:`
 * @returns the database, held by this process alone until it is closed
 * @throws DatabaseInUse when another process holds it
 */
export function openDatabase(path: string): Database {
  const Library: typeof Libsql = load('libsql');
  const library = new Library(path);
  const statements = new Map<string, ReturnType<typeof library.prepare>>();
  const prepared = (sql: string) => {
    const known = statements.get(sql);
    if (known) return known;
    const made = library.prepare(sql);
    statements.set(sql, made);
    return made;
  };
  let depth = 0;

  const database: Database = {
    run: (sql, values = []) => void prepared(sql).run([...values]),
    all: (row, sql, values = []) => z.array(row).parse(prepared(sql).all([...values])),
    first: (row, sql, values = []) => database.all(row, sql, values)[0],
    exec: (sql) => void library.exec(sql),
    transaction: (work) => {
      if (depth > 0) return work();
      library.exec('BEGIN IMMEDIATE');
      depth += 1;
      try {
        const result = work();
        library.exec('COMMIT');
        return result;
      } catch (error) {
        library.exec('ROLLBACK');
        throw error;
      } finally {
        depth -= 1;
      }
    },
    close: () => {
      // The library keeps the file locked until its statements are collected; giving the lock back first lets the
      // same process open the book again at once.
      library.exec('PRAGMA locking_mode = NORMAL');
      library.prepare('SELECT count(*) FROM sqlite_master').all([]);
      statements.clear();
      library.close();
    },
  };

  try {
    for (const pragma of [
      'locking_mode = EXCLUSIVE',
      'journal_mode = TRUNCATE',
      'synchronous = FULL',
      'foreign_keys = ON',
    ]) {
      library.exec(`PRAGMA ${pragma}`);
    }
    library.exec('BEGIN IMMEDIATE');
    library.exec('COMMIT');
  } catch (error) {
    library.close();
    if (isBusy(error)) throw new DatabaseInUse(path, { cause: error });
    throw error;
  }
  return database;
}

function isBusy(error: unknown): boolean {
  return error instanceof Error && 'code' in error && String(error.code).startsWith('SQLITE_BUSY');
}
