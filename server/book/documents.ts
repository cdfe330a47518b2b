/** JSON documents by the hash of their text: airplane descriptions and results, named by the journal. */
import { createHash } from 'node:crypto';
import * as z from 'zod';
import type { Database } from './database.ts';

const rowSchema = z.object({ sha256: z.string(), json: z.string() });

/** Hash of a text, hexadecimal. */
export function sha256Of(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}

/**
 * Keep a document; the same text is kept once.
 * @returns its SHA-256
 */
export function keepDocument(database: Database, json: string): string {
  const sha256 = sha256Of(json);
  database.run('INSERT INTO document (sha256, json) VALUES (?, ?) ON CONFLICT DO NOTHING', [sha256, json]);
  return sha256;
}

/**
 * A document, parsed.
 * @throws Error when the book lacks it: the foreign keys do not let that happen
 */
export function documentOf(database: Database, sha256: string): unknown {
  const row = database.first(rowSchema, 'SELECT * FROM document WHERE sha256 = ?', [sha256]);
  if (!row) throw new Error(`the document ${sha256} is missing`);
  return JSON.parse(row.json);
}

/** Documents of one kind kept as understood. */
const KEPT = 300;

/**
 * A way to understand documents of one kind, each once: its hash names its text, so its meaning cannot change.
 * @param read from JSON to meaning
 * @returns gives the meaning of a document, shared by all who ask: not to be changed
 */
export function understanding<T>(read: (json: unknown) => T): (database: Database, sha256: string) => T {
  const known = new Map<string, T>();
  return (database, sha256) => {
    const before = known.get(sha256);
    if (before !== undefined) return before;
    const made = read(documentOf(database, sha256));
    known.set(sha256, made);
    for (const old of [...known.keys()].slice(0, -KEPT)) known.delete(old);
    return made;
  };
}

/** All documents, for the export. */
export function allDocuments(database: Database): { sha256: string; json: string }[] {
  return database.all(rowSchema, 'SELECT * FROM document ORDER BY sha256');
}
