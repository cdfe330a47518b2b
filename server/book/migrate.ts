/** Bring a book's database to the newest schema, one migration after another, a copy kept before each. */
import { rmSync } from 'node:fs';
import * as z from 'zod';
import type { Database } from './database.ts';
import { arranging } from './migrations/arranging.ts';
import { first } from './migrations/first.ts';
import { second } from './migrations/second.ts';
import { third } from './migrations/third.ts';

/** In order; the version of a schema is the number of migrations behind it. Never edited once released. */
export const MIGRATIONS: readonly string[] = [first, second, arranging, third];

/** A book written by a newer version of the project. */
export class NewerBook extends Error {}

/**
 * @param database an open database
 * @param file its file, copied before each migration of a book that already holds something; absent for memory
 * @throws NewerBook when the schema is newer than this version knows
 */
export function migrate(database: Database, file?: string): void {
  const found = versionOf(database);
  for (let version = found; version < MIGRATIONS.length; version += 1) {
    if (file && found > 0) keepCopy(database, `${file}.before-${version + 1}`);
    database.transaction(() => {
      database.exec(MIGRATIONS[version] ?? '');
      database.exec(`PRAGMA user_version = ${version + 1}`);
    });
  }
  if (versionOf(database) > MIGRATIONS.length) throw new NewerBook(file ?? 'a book in memory');
}

/** By the database itself: reading its file from outside would let go of the lock this process holds on it. */
function keepCopy(database: Database, copy: string): void {
  rmSync(copy, { force: true });
  database.run('VACUUM INTO ?', [copy]);
}

function versionOf(database: Database): number {
  return database.first(z.object({ user_version: z.int() }), 'PRAGMA user_version')?.user_version ?? 0;
}
