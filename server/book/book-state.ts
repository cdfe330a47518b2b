/** A book as pages, routes and cards see it: plain JSON, trade words, everything with who and when. */
import * as z from 'zod';
import type { Airplane } from '../../analysis/airplane/index.ts';
import { mapSchema } from '../../analysis/logs/log-map.ts';
import type { TestState } from '../../analysis/program/index.ts';
import type { Problem } from '../../analysis/remarks/index.ts';
import { CODES } from '../../analysis/remarks/index.ts';
import { resultSchema } from '../../analysis/results/index.ts';
import { decisionSchema, entrySchema, reductionInputSchema } from './entry.ts';
import { outingNoteSchema, partSchema } from './plan-entries.ts';

const testStates = [
  'planned',
  'briefed',
  'flown',
  'reduced',
  'accepted',
  'repeat',
  'stale',
  'not applicable',
] as const satisfies readonly TestState[];

const problemCode = z.custom<Problem['code']>((code) => typeof code === 'string' && code in CODES);

export const problemSchema = z.object({
  code: problemCode,
  message: z.string(),
  mend: z.string(),
  where: z.object({
    file: z.exactOptional(z.string()),
    line: z.exactOptional(z.number()),
    column: z.exactOptional(z.string()),
    field: z.exactOptional(z.string()),
    fromSeconds: z.exactOptional(z.number()),
    toSeconds: z.exactOptional(z.number()),
  }),
});

export const revisionSchema = z.object({
  number: z.int(),
  at: z.string(),
  who: z.string(),
  why: z.string(),
  /** entry of the journal that it undoes, where it does */
  undoes: z.int().nullable(),
});

export const storedAirplaneSchema = z.object({
  /** as saved, units and all */
  file: z.unknown(),
  /** null when the stored description no longer fits the schema; then `problems` says why */
  parsed: z.custom<Airplane>().nullable(),
  problems: z.array(problemSchema),
  revision: z.int(),
  /** oldest first */
  revisions: z.array(revisionSchema),
});

export const storedLogSchema = z.object({
  /** SHA-256 of its bytes */
  id: z.string(),
  /** fit to be shown, and no other log of the book has it */
  name: z.string(),
  /** as it was sent */
  givenName: z.string(),
  size: z.int(),
  receivedAt: z.string(),
  who: z.string(),
  /** what was confirmed for it, if anything */
  map: mapSchema.nullable(),
  layout: z.string().nullable(),
});

export const savedMapSchema = z.object({
  layout: z.string(),
  map: mapSchema,
  /** the log it was confirmed on */
  log: z.string(),
  logName: z.string(),
});

export const storedResultSchema = z.object({
  number: z.int(),
  kind: z.string(),
  at: z.string(),
  who: z.string(),
  status: z.enum([...decisionSchema.options, 'stale']),
  /** what was decided, also while it is stale */
  decision: decisionSchema,
  note: z.string(),
  decidedAt: z.string().nullable(),
  decidedBy: z.string().nullable(),
  /** why it no longer stands, one sentence each; empty when it stands */
  stale: z.array(z.string()),
  input: reductionInputSchema,
  /** names of its logs, in order */
  logNames: z.array(z.string()),
  tests: z.array(z.string()),
  result: resultSchema,
});

export const testStatusSchema = z.object({
  test: z.string(),
  title: z.string(),
  status: z.enum(testStates),
  /** one sentence: why it has this status */
  because: z.string(),
  /** number of the result it rests on */
  result: z.int().nullable(),
});

export const squawkSchema = z.object({
  number: z.int(),
  text: z.string(),
  open: z.boolean(),
  at: z.string(),
  who: z.string(),
  how: z.string(),
  settledAt: z.string().nullable(),
  settledBy: z.string().nullable(),
});

export const hoursEntrySchema = z.object({
  number: z.int(),
  date: z.string(),
  outing: z.string(),
  flightSeconds: z.number(),
  engineSeconds: z.number(),
  landings: z.int(),
  note: z.string(),
  at: z.string(),
  who: z.string(),
});

export const hoursLedgerSchema = z.object({
  entries: z.array(hoursEntrySchema),
  flightSeconds: z.number(),
  engineSeconds: z.number(),
  landings: z.int(),
});

export const keptNoteSchema = z.object({
  number: z.int(),
  what: outingNoteSchema,
  outing: z.string(),
  parts: z.array(partSchema),
  note: z.string(),
  at: z.string(),
  who: z.string(),
});

export const leftOutSchema = z.object({
  test: z.string(),
  reason: z.string(),
  instead: z.string(),
  at: z.string(),
  who: z.string(),
});

export const printingSchema = z.object({
  cards: z.array(z.string()),
  paper: z.string(),
  revision: z.int(),
  at: z.string(),
});

export const bookStateSchema = z.object({
  id: z.string(),
  /** stays with the book wherever it is moved */
  uid: z.string(),
  demo: z.boolean(),
  airplane: storedAirplaneSchema,
  logs: z.array(storedLogSchema),
  maps: z.array(savedMapSchema),
  results: z.array(storedResultSchema),
  squawks: z.array(squawkSchema),
  hours: hoursLedgerSchema,
  printed: z.array(printingSchema),
  /** what came of outings, oldest first */
  outingNotes: z.array(keptNoteSchema),
  /** tests the person leaves out, each with what stands in its place */
  leftOut: z.array(leftOutSchema),
  /** one for each test of the catalogue, in the program's order, those not applicable last */
  testStatus: z.array(testStatusSchema),
  /** newest first */
  journal: z.array(entrySchema),
});

export const bookSummarySchema = z.object({
  id: z.string(),
  name: z.string(),
  registration: z.string(),
  demo: z.boolean(),
  /** why it cannot be opened now, if it cannot */
  problems: z.array(problemSchema),
});

export type Revision = z.output<typeof revisionSchema>;
export type StoredAirplane = z.output<typeof storedAirplaneSchema>;
export type StoredLog = z.output<typeof storedLogSchema>;
export type SavedMap = z.output<typeof savedMapSchema>;
export type StoredResult = z.output<typeof storedResultSchema>;
export type ResultStatus = StoredResult['status'];
export type TestStatus = z.output<typeof testStatusSchema>;
export type Squawk = z.output<typeof squawkSchema>;
export type HoursEntry = z.output<typeof hoursEntrySchema>;
export type HoursLedger = z.output<typeof hoursLedgerSchema>;
export type KeptNote = z.output<typeof keptNoteSchema>;
export type LeftOutTest = z.output<typeof leftOutSchema>;
export type Printing = z.output<typeof printingSchema>;
export type BookState = z.output<typeof bookStateSchema>;
export type BookSummary = z.output<typeof bookSummarySchema>;
