/**
 * The append-only journal: each entry carries the hash of the one before it, so that a change of anything written
 * earlier shows. An entry and the state that it changes are written in one transaction.
 */
import { createHash } from 'node:crypto';
import * as z from 'zod';
import type { Database } from './database.ts';
import { derive } from './derive.ts';
import { type Entry, type Happening, happeningSchema, subjectOf } from './entry.ts';

/** Who did it and why, in their words; empty where they did not say. */
export interface By {
  who?: string | undefined;
  why?: string | undefined;
}

/** `prev` of the first entry. */
export const BEGINNING = '0'.repeat(64);

const rowSchema = z.object({
  seq: z.int(),
  at: z.string(),
  who: z.string(),
  why: z.string(),
  subject: z.string(),
  data: z.string(),
  prev: z.string(),
  hash: z.string(),
});

type Row = z.output<typeof rowSchema>;

/**
 * Append what happened and bring the state up to it. To be called inside the transaction that stores what it names.
 * @param database the book's database
 * @param happening what happened
 * @param at time, ISO 8601 UTC
 * @param by who and why
 * @returns the entry as written
 */
export function append(database: Database, happening: Happening, at: string, by: By = {}): Entry {
  return database.transaction(() => {
    const last = database.first(rowSchema, 'SELECT * FROM journal ORDER BY seq DESC LIMIT 1');
    const row = {
      seq: (last?.seq ?? 0) + 1,
      at,
      who: by.who ?? '',
      why: by.why ?? '',
      subject: subjectOf(happening),
      data: JSON.stringify(happeningSchema.parse(happening)),
      prev: last?.hash ?? BEGINNING,
    };
    return insertRow(database, { ...row, hash: hashOf(row) });
  });
}

/**
 * Write an entry that was made elsewhere (an import), and bring the state up to it.
 * @param database the book's database
 * @param row the entry, its hash already verified
 */
export function insertRow(database: Database, row: Row): Entry {
  database.run('INSERT INTO journal (seq, at, who, why, subject, data, prev, hash) VALUES (?, ?, ?, ?, ?, ?, ?, ?)', [
    row.seq,
    row.at,
    row.who,
    row.why,
    row.subject,
    row.data,
    row.prev,
    row.hash,
  ]);
  const entry = entryOf(row);
  derive(database, entry);
  return entry;
}

/** All rows in order, as stored. */
export function journalRows(database: Database): Row[] {
  return database.all(rowSchema, 'SELECT * FROM journal ORDER BY seq');
}

/** The newest entries, or those before an entry, newest first. */
export function journalTail(database: Database, count: number, before = Number.MAX_SAFE_INTEGER): Entry[] {
  const sql = 'SELECT * FROM journal WHERE seq < ? ORDER BY seq DESC LIMIT ?';
  return database.all(rowSchema, sql, [before, count]).map(entryOf);
}

/** The entries about one subject, oldest first. */
export function entriesOn(database: Database, subject: string): Entry[] {
  return database.all(rowSchema, 'SELECT * FROM journal WHERE subject = ? ORDER BY seq', [subject]).map(entryOf);
}

/** One entry, by its number. */
export function entryNumber(database: Database, seq: number): Entry | undefined {
  return database.all(rowSchema, 'SELECT * FROM journal WHERE seq = ?', [seq]).map(entryOf)[0];
}

/** The hash of an entry: over all its fields as stored, the previous hash among them. */
export function hashOf(row: Omit<Row, 'hash'>): string {
  const whole = JSON.stringify([row.seq, row.at, row.who, row.why, row.subject, row.data, row.prev]);
  return createHash('sha256').update(whole).digest('hex');
}

/** Where a chain of rows breaks, in words; empty when it holds. */
export function breaksIn(rows: readonly Row[]): string[] {
  const breaks: string[] = [];
  let prev = BEGINNING;
  rows.forEach((row, index) => {
    if (row.seq !== index + 1) breaks.push(`entry ${index + 1} is missing; ${row.seq} stands in its place`);
    if (row.prev !== prev) breaks.push(`entry ${row.seq} does not follow the one before it`);
    if (row.hash !== hashOf(row)) breaks.push(`entry ${row.seq} was changed after it was written`);
    prev = row.hash;
  });
  return breaks;
}

export const journalRowSchema = rowSchema;
export type JournalRow = Row;

function entryOf(row: Row): Entry {
  const { seq, at, who, why, subject, prev, hash } = row;
  return { seq, at, who, why, subject, prev, hash, happening: happeningSchema.parse(JSON.parse(row.data)) };
}
