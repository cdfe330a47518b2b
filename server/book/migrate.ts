/** Bring a book's database to the newest schema, one migration after another, a copy kept before each. */
import { copyFileSync } from 'node:fs';
import * as z from 'zod';
import type { Database } from './database.ts';
import { first } from './migrations/first.ts';

/** In order; the version of a schema is the number of migrations behind it. Never edited once released. */
export const MIGRATIONS: readonly string[] = [first];

/** A book written by a newer version of the project. */
export class NewerBook extends Error {}

/**
 * @param database an open database
 * @param file its file, copied before each migration of a book that already holds something; absent for memory
 * @throws NewerBook when the schema is newer than this version knows
 */
export function migrate(database: Database, file?: string): void {
  for (let version = versionOf(database); version < MIGRATIONS.length; version += 1) {
    if (file && version > 0) copyFileSync(file, `${file}.before-${version + 1}`);
    database.transaction(() => {
      database.exec(MIGRATIONS[version] ?? '');
      database.exec(`PRAGMA user_version = ${version + 1}`);
    });
  }
  if (versionOf(database) > MIGRATIONS.length) throw new NewerBook(file ?? 'a book in memory');
}

function versionOf(database: Database): number {
  return database.first(z.object({ user_version: z.int() }), 'PRAGMA user_version')?.user_version ?? 0;
}
