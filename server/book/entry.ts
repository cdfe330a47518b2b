/**
 * What can happen to a book. Each entry of the journal has a kind with its own data; the current state is what these
 * entries make of an empty book, nothing else. Undoing is one more entry that names the one it undoes.
 */
import * as z from 'zod';
import { mapSchema } from '../../analysis/logs/log-map.ts';
import { isPlanHappening, planHappenings, planSubjectOf } from './plan-entries.ts';

export const sha256Schema = z.string().regex(/^[0-9a-f]{64}$/, 'a SHA-256 in hexadecimal');

/** what a person has decided about a result */
export const decisionSchema = z.enum(['proposed', 'accepted', 'repeat']);

/** what a person says of a test that no reduction answers */
export const markSchema = z.enum(['briefed', 'flown', 'accepted', 'repeat', 'planned']);

/** all that a reduction was given, so that it can be done again */
export const reductionInputSchema = z.object({
  logs: z.array(sha256Schema),
  points: z.unknown().optional(),
  segments: z.array(z.record(z.string(), z.unknown())).optional(),
  options: z.record(z.string(), z.unknown()).optional(),
  /** number of the accepted airspeed result used; null where a person wanted none */
  calibration: z.int().nullable().optional(),
  /** shift of each log chosen by hand, s, by log */
  shifts: z.record(z.string(), z.number()).optional(),
  /** catalogue tests this run was flown for */
  tests: z.array(z.string()),
  /** the card its figures were written on */
  card: z
    .object({
      /** number of the written card in this book */
      number: z.int().positive(),
      test: z.string(),
      title: z.string(),
      /** as printed: `rev 7`, `4 May 2031` */
      revision: z.string(),
      printed: z.string(),
      /** sheets of the card that its figures stand on */
      sheets: z.array(z.int().positive()),
    })
    .optional(),
});

const hoursSchema = z.object({
  number: z.int().positive(),
  /** day of the outing, as the person writes it: 2031-05-04 */
  date: z.iso.date(),
  outing: z.string().max(80),
  flightSeconds: z.number().nonnegative(),
  engineSeconds: z.number().nonnegative(),
  landings: z.int().nonnegative(),
  note: z.string().max(2000),
});

const undoes = { undoes: z.int().positive().optional() };

export const happeningSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('book-created'), uid: z.string().min(8), demo: z.boolean() }),
  z.object({ kind: z.literal('airplane-saved'), document: sha256Schema, ...undoes }),
  z.object({
    kind: z.literal('log-received'),
    log: sha256Schema,
    name: z.string(),
    givenName: z.string(),
    size: z.int().nonnegative(),
  }),
  z.object({
    kind: z.literal('map-confirmed'),
    log: sha256Schema,
    layout: z.string().nullable(),
    map: mapSchema.nullable(),
    ...undoes,
  }),
  z.object({
    kind: z.literal('log-aligned'),
    log: sha256Schema,
    /** the log that sets the clock */
    first: sha256Schema,
    /** s to add to the log's own time; null: as the signals tell */
    seconds: z.number().nullable(),
    ...undoes,
  }),
  z.object({
    kind: z.literal('result-reduced'),
    number: z.int().positive(),
    reduction: z.string(),
    document: sha256Schema,
    input: reductionInputSchema,
    /** configuration values the reduction read, by path: a change of one of them makes the result stale */
    reads: z.array(z.string()),
  }),
  z.object({
    kind: z.literal('result-decided'),
    number: z.int().positive(),
    decision: decisionSchema,
    note: z.string().max(4000),
    ...undoes,
  }),
  z.object({
    kind: z.literal('test-marked'),
    test: z.string(),
    mark: markSchema,
    note: z.string().max(4000),
    ...undoes,
  }),
  z.object({
    kind: z.literal('cards-printed'),
    cards: z.array(z.string()),
    paper: z.string(),
    revision: z.int().positive(),
    /** each card as it was printed, kept by its hash, in order; entries of older versions lack them */
    documents: z.array(z.object({ test: z.string(), document: sha256Schema })).optional(),
  }),
  z.object({
    kind: z.literal('readings-written'),
    number: z.int().positive(),
    test: z.string(),
    /** the card as printed, kept by its hash */
    document: sha256Schema,
    paper: z.string(),
    /** what was written, by key of the box; empty where it was taken out again */
    boxes: z.record(z.string().max(200), z.string().max(2000)),
    ...undoes,
  }),
  z.object({ kind: z.literal('squawk-opened'), number: z.int().positive(), text: z.string().min(1).max(4000) }),
  z.object({
    kind: z.literal('squawk-settled'),
    number: z.int().positive(),
    open: z.boolean(),
    how: z.string().max(4000),
    ...undoes,
  }),
  z.object({ kind: z.literal('hours-logged'), ...hoursSchema.shape }),
  ...planHappenings,
  z.object({ kind: z.literal('put-away'), subject: z.string(), ...undoes }),
  z.object({ kind: z.literal('brought-back'), subject: z.string(), ...undoes }),
]);

/** Something that happens to a book. */
export type Happening = z.output<typeof happeningSchema>;
export type HappeningKind = Happening['kind'];
export type Decision = z.output<typeof decisionSchema>;
export type Mark = z.output<typeof markSchema>;
export type ReductionRequest = z.output<typeof reductionInputSchema>;

/** One entry of the journal. `hash` is over all the others, `prev` is the hash of the entry before. */
export const entrySchema = z.object({
  seq: z.int().positive(),
  /** ISO 8601, UTC */
  at: z.string(),
  who: z.string(),
  why: z.string(),
  subject: z.string(),
  happening: happeningSchema,
  prev: z.string(),
  hash: sha256Schema,
});

export type Entry = z.output<typeof entrySchema>;

/**
 * What an entry is about: entries about one subject follow each other, and only the last of them can be undone.
 * @param happening what happened
 * @returns such as `airplane`, `log:<sha256>`, `result:3`, `decision:3`
 */
export function subjectOf(happening: Happening): string {
  if (isPlanHappening(happening)) return planSubjectOf(happening);
  switch (happening.kind) {
    case 'book-created':
      return 'book';
    case 'airplane-saved':
      return 'airplane';
    case 'log-received':
      return `log:${happening.log}`;
    case 'map-confirmed':
      return `map:${happening.log}`;
    case 'log-aligned':
      return `alignment:${happening.log}:${happening.first}`;
    case 'result-reduced':
      return `result:${happening.number}`;
    case 'result-decided':
      return `decision:${happening.number}`;
    case 'test-marked':
      return `test:${happening.test}`;
    case 'cards-printed':
      return 'cards';
    case 'readings-written':
      return `written:${happening.number}`;
    case 'squawk-opened':
      return `squawk:${happening.number}`;
    case 'squawk-settled':
      return `settling:${happening.number}`;
    case 'hours-logged':
      return `hours:${happening.number}`;
    case 'put-away':
    case 'brought-back':
      return happening.subject;
  }
}
