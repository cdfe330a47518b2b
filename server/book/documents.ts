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

/** All documents, for the export. */
export function allDocuments(database: Database): { sha256: string; json: string }[] {
  return database.all(rowSchema, 'SELECT * FROM document ORDER BY sha256');
}
