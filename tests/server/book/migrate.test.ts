/** A book of an older schema is brought up to date, a copy kept, and stays held by the process that opened it. */
import { existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import * as z from 'zod';
import { openBookFolder } from '../../../server/book/book.ts';
import { openDatabase } from '../../../server/book/database.ts';
import { first } from '../../../server/book/migrations/first.ts';
import { temporaryFolder } from '../desk-for-tests.ts';

it('a book of the first schema', () => {
  const folder = join(temporaryFolder(), 'old');
  mkdirSync(folder);
  const old = openDatabase(join(folder, 'book.db'));
  old.exec(first);
  old.exec('PRAGMA user_version = 1');
  old.run("INSERT INTO document (sha256, json) VALUES ('a', '{}')");
  old.close();
  const book = openBookFolder(folder, 'old', () => new Date('2031-05-04T10:00:00Z'));
  const count = z.object({ n: z.int() });
  expect(book.database.first(count, 'SELECT count(*) AS n FROM written')).toEqual({ n: 0 });
  expect(book.database.first(count, 'SELECT count(*) AS n FROM document')).toEqual({ n: 1 });
  const copy = join(folder, 'book.db.before-2');
  expect(existsSync(copy)).toBe(true);
  const kept = openDatabase(copy);
  expect(kept.first(z.object({ user_version: z.int() }), 'PRAGMA user_version')).toEqual({ user_version: 1 });
  kept.close();
  book.close();
});
