/** The current state of a book, read from its state tables through one schema a row. */
import * as z from 'zod';
import { mapSchema } from '../../analysis/logs/log-map.ts';
import type { Database } from './database.ts';
import { decisionSchema, markSchema, reductionInputSchema } from './entry.ts';
import { flag, json, withEntry } from './state-rows.ts';

const revisionRow = z.object({
  number: z.int(),
  document: z.string(),
  undoes: z.int().nullable(),
  entry: z.int(),
  at: z.string(),
  who: z.string(),
  why: z.string(),
});

const logRow = z.object({
  sha256: z.string(),
  name: z.string(),
  given_name: z.string(),
  size: z.int(),
  layout: z.string().nullable(),
  map: json.pipe(mapSchema).nullable(),
  mapped: z.int().nullable(),
  away: flag,
  entry: z.int(),
  at: z.string(),
  who: z.string(),
});

const resultRow = z.object({
  number: z.int(),
  reduction: z.string(),
  document: z.string(),
  input: json.pipe(reductionInputSchema),
  reads: json.pipe(z.array(z.string())),
  decision: decisionSchema,
  note: z.string(),
  decided: z.int().nullable(),
  away: flag,
  entry: z.int(),
  at: z.string(),
  who: z.string(),
  decided_at: z.string().nullable(),
  decided_by: z.string().nullable(),
});

const markRow = z.object({ test: z.string(), mark: markSchema, note: z.string(), at: z.string(), who: z.string() });

const printedRow = z.object({
  cards: json.pipe(z.array(z.string())),
  paper: z.string(),
  revision: z.int(),
  documents: json.pipe(z.array(z.object({ test: z.string(), document: z.string() }))),
  at: z.string(),
});

const squawkRow = z.object({
  number: z.int(),
  text: z.string(),
  open: flag,
  how: z.string(),
  away: flag,
  at: z.string(),
  who: z.string(),
  settled_at: z.string().nullable(),
  settled_by: z.string().nullable(),
});

const hoursRow = z.object({
  number: z.int(),
  date: z.string(),
  outing: z.string(),
  flight_seconds: z.number(),
  engine_seconds: z.number(),
  landings: z.int(),
  note: z.string(),
  away: flag,
  at: z.string(),
  who: z.string(),
});

const writtenRow = z.object({
  number: z.int(),
  test: z.string(),
  document: z.string(),
  paper: z.string(),
  boxes: json.pipe(z.record(z.string(), z.string())),
  away: flag,
  changed: z.int(),
  changed_at: z.string(),
  at: z.string(),
  who: z.string(),
});

export type RevisionRow = z.output<typeof revisionRow>;
export type LogRow = z.output<typeof logRow>;
export type ResultRow = z.output<typeof resultRow>;
export type MarkRow = z.output<typeof markRow>;
export type PrintedRow = z.output<typeof printedRow>;
export type SquawkRow = z.output<typeof squawkRow>;
export type HoursRow = z.output<typeof hoursRow>;
export type WrittenRow = z.output<typeof writtenRow>;

/** Revisions of the airplane's description, oldest first. */
export function revisions(database: Database): RevisionRow[] {
  return database.all(revisionRow, `SELECT t.*, j.at, j.who, j.why ${withEntry('revision')} ORDER BY t.number`);
}

/** Logs, those put away among them, in the order received. */
export function logs(database: Database): LogRow[] {
  return database.all(logRow, `SELECT t.*, j.at, j.who ${withEntry('log')} ORDER BY t.entry`);
}

/** Results, those put away among them, oldest first. */
export function results(database: Database): ResultRow[] {
  return database.all(
    resultRow,
    `SELECT t.*, j.at, j.who, d.at AS decided_at, d.who AS decided_by
     ${withEntry('result')} LEFT JOIN journal AS d ON d.seq = t.decided ORDER BY t.number`,
  );
}

/** Shifts between two logs that a person set, those taken back left out; the newest first. */
export function handShifts(database: Database) {
  return database.all(
    z.object({ log: z.string(), first: z.string(), seconds: z.number(), at: z.string(), who: z.string() }),
    `SELECT t.log, t.first, t.seconds, j.at, j.who ${withEntry('alignment')}
     WHERE t.seconds IS NOT NULL ORDER BY t.entry DESC`,
  );
}

/** What was said of tests that no reduction answers. */
export function marks(database: Database): MarkRow[] {
  return database.all(markRow, `SELECT t.*, j.at, j.who ${withEntry('mark')} ORDER BY t.test`);
}

/** What was printed, oldest first. */
export function printings(database: Database): PrintedRow[] {
  return database.all(printedRow, `SELECT t.*, j.at ${withEntry('printed')} ORDER BY t.entry`);
}

/** Squawks, oldest first. */
export function squawks(database: Database): SquawkRow[] {
  return database.all(
    squawkRow,
    `SELECT t.*, j.at, j.who, s.at AS settled_at, s.who AS settled_by
     ${withEntry('squawk')} LEFT JOIN journal AS s ON s.seq = t.settled ORDER BY t.number`,
  );
}

/** Hours logged, by date. */
export function hours(database: Database): HoursRow[] {
  return database.all(hoursRow, `SELECT t.*, j.at, j.who ${withEntry('hours')} ORDER BY t.date, t.number`);
}

/** Cards whose readings were written in, those put away among them, in the order begun. */
export function writtenCards(database: Database): WrittenRow[] {
  return database.all(
    writtenRow,
    `SELECT t.*, j.at, j.who, c.at AS changed_at
     ${withEntry('written')} JOIN journal AS c ON c.seq = t.changed ORDER BY t.number`,
  );
}

/** The newest map confirmed for a layout of columns, and the log it was confirmed on. */
export function mapForLayout(database: Database, layout: string) {
  return database.first(
    z.object({ sha256: z.string(), name: z.string(), map: json.pipe(mapSchema), at: z.string() }),
    `SELECT t.sha256, t.name, t.map, j.at FROM log AS t JOIN journal AS j ON j.seq = t.mapped
     WHERE t.layout = ? AND t.map IS NOT NULL ORDER BY t.mapped DESC LIMIT 1`,
    [layout],
  );
}

/** The next free number of a table that counts its rows. */
export function nextNumber(database: Database, table: 'result' | 'squawk' | 'hours' | 'written'): number {
  const row = z.object({ next: z.int() });
  return database.first(row, `SELECT coalesce(max(number), 0) + 1 AS next FROM ${table}`)?.next ?? 1;
}

/** Whether the book is a demo, and its own name that stays with it wherever it is moved. */
export function identity(database: Database): { uid: string; demo: boolean } {
  const row = database.first(z.object({ uid: z.string(), demo: flag }), 'SELECT uid, demo FROM book');
  if (!row) throw new Error('the book has no first entry');
  return row;
}
