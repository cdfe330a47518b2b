/** The state of a book's program, read from its tables through one schema a row. */
import * as z from 'zod';
import type { Database } from './database.ts';
import { documentOf, understanding } from './documents.ts';
import { arrangedBecauseSchema, arrangementSchema, outingNoteSchema, partSchema } from './plan-entries.ts';
import { flag, json, withEntry } from './state-rows.ts';

const by = { at: z.string(), who: z.string() };

const arrangementRow = z.object({
  entry: z.int(),
  document: z.string().nullable(),
  because: arrangedBecauseSchema,
  words: z.string(),
  again: json.pipe(z.array(partSchema)),
  undoes: z.int().nullable(),
  why: z.string(),
  ...by,
});

const noteRow = z.object({
  number: z.int(),
  what: outingNoteSchema,
  outing: z.string(),
  parts: json.pipe(z.array(partSchema)),
  note: z.string(),
  away: flag,
  entry: z.int(),
  ...by,
});

const paperRow = z.object({
  outings: json.pipe(z.array(z.object({ title: z.string(), parts: z.array(partSchema) }))),
  ...by,
});

const ownRow = z.object({ test: z.string(), document: z.string().nullable(), entry: z.int(), ...by });

const leftOutRow = z.object({ test: z.string(), out: flag, reason: z.string(), instead: z.string(), ...by });

export type ArrangementRow = z.output<typeof arrangementRow>;
export type NoteRow = z.output<typeof noteRow>;
export type PaperRow = z.output<typeof paperRow>;
export type OwnRow = z.output<typeof ownRow>;
export type LeftOutRow = z.output<typeof leftOutRow>;

/** How the program was arranged, oldest first; the last one is in force. */
export function arrangements(database: Database): ArrangementRow[] {
  return database.all(arrangementRow, `SELECT t.*, j.at, j.who, j.why ${withEntry('arrangement')} ORDER BY t.entry`);
}

/** What came of outings, those put away among them, oldest first. */
export function outingNotes(database: Database): NoteRow[] {
  return database.all(noteRow, `SELECT t.*, j.at, j.who ${withEntry('outing_note')} ORDER BY t.number`);
}

/** Outings that were printed, oldest first. */
export function outingPapers(database: Database): PaperRow[] {
  return database.all(paperRow, `SELECT t.outings, j.at, j.who ${withEntry('outing_paper')} ORDER BY t.entry`);
}

/** The person's own tests, those withdrawn among them. */
export function ownTestRows(database: Database): OwnRow[] {
  return database.all(ownRow, `SELECT t.*, j.at, j.who ${withEntry('own_test')} ORDER BY t.test`);
}

/** Tests the person left out or took in again. */
export function leftOutRows(database: Database): LeftOutRow[] {
  return database.all(
    leftOutRow,
    `SELECT t.test, t.out, t.reason, t.instead, j.at, j.who ${withEntry('left_out')} ORDER BY t.test`,
  );
}

const arrangementIn = understanding((read) => arrangementSchema.parse(read));

/** The arrangement in force; undefined where the program is as worked out. */
export function arrangementNow(database: Database) {
  const last = arrangements(database).at(-1);
  return last?.document == null ? undefined : arrangementIn(database, last.document);
}

/** The person's own tests as they were saved, unread. */
export function ownTestsNow(database: Database): { test: string; document: string; file: unknown }[] {
  return ownTestRows(database).flatMap(({ test, document }) =>
    document === null ? [] : [{ test, document, file: documentOf(database, document) }],
  );
}

/** Keys of parts that are on record as done and not to be done again. */
export function partsDone(database: Database): Set<string> {
  const key = ({ test, part }: z.output<typeof partSchema>) => `${test}#${part}`;
  const arranged = arrangements(database);
  const undone = new Set(arranged.map((row) => row.undoes));
  const steps = [
    ...outingNotes(database)
      .filter((row) => !row.away && row.what === 'done')
      .map((row) => ({ entry: row.entry, done: true, parts: row.parts })),
    ...arranged
      .filter((row) => !undone.has(row.entry))
      .map((row) => ({ entry: row.entry, done: false, parts: row.again })),
  ].sort((a, b) => a.entry - b.entry);
  const done = new Set<string>();
  for (const step of steps) {
    for (const part of step.parts) {
      if (step.done) done.add(key(part));
      else done.delete(key(part));
    }
  }
  return done;
}

/** The next free number of a note. */
export function nextNoteNumber(database: Database): number {
  return (outingNotes(database).at(-1)?.number ?? 0) + 1;
}
