/** What can happen to a program: it is arranged, an outing is flown or put off, tests are added or left out. */
import * as z from 'zod';

const sha256 = z.string().regex(/^[0-9a-f]{64}$/, 'a SHA-256 in hexadecimal');
const undoes = { undoes: z.int().positive().optional() };

/** one test, or one part of a test that takes several outings */
export const partSchema = z.object({ test: z.string(), part: z.int().positive() });

/** outings in order, each the parts done on it */
export const arrangementSchema = z.array(z.array(partSchema.extend({ of: z.int().positive() })));

/** what made a person arrange the program anew */
export const arrangedBecauseSchema = z.enum(['move', 'repeat', 'no-go', 'afresh']);

/** what came of an outing */
export const outingNoteSchema = z.enum(['done', 'no-go', 'day-lost']);

const words = z.string().max(4000);

export const planHappenings = [
  z.object({
    kind: z.literal('program-arranged'),
    /** the arrangement, kept by its hash; null where the program is as worked out */
    document: sha256.nullable(),
    because: arrangedBecauseSchema,
    words,
    /** parts that were done and are done again */
    again: z.array(partSchema),
    ...undoes,
  }),
  z.object({
    kind: z.literal('outing-noted'),
    number: z.int().positive(),
    what: outingNoteSchema,
    /** its title, as it stood in the plan */
    outing: z.string().max(400),
    parts: z.array(partSchema).min(1),
    note: words,
  }),
  z.object({
    kind: z.literal('outings-printed'),
    outings: z.array(z.object({ title: z.string().max(400), parts: z.array(partSchema) })),
  }),
  z.object({
    kind: z.literal('own-test-saved'),
    test: z.string().max(80),
    /** the test, kept by its hash; null where it is withdrawn */
    document: sha256.nullable(),
    ...undoes,
  }),
  z.object({
    kind: z.literal('test-left-out'),
    test: z.string().max(80),
    out: z.boolean(),
    reason: words,
    /** the limit put in its place */
    instead: words,
    ...undoes,
  }),
] as const;

export type PlanHappening = z.output<(typeof planHappenings)[number]>;
export type ArrangedBecause = z.output<typeof arrangedBecauseSchema>;
export type OutingNote = z.output<typeof outingNoteSchema>;

const KINDS: ReadonlySet<string> = new Set(planHappenings.map((one) => one.shape.kind.value));

/** Whether something that happened is about the program. */
export function isPlanHappening(happening: { kind: string }): happening is PlanHappening {
  return KINDS.has(happening.kind);
}

/** What an entry about the program is about. */
export function planSubjectOf(happening: PlanHappening): string {
  switch (happening.kind) {
    case 'program-arranged':
      return 'arrangement';
    case 'outing-noted':
      return `outing-note:${happening.number}`;
    case 'outings-printed':
      return 'outings-printed';
    case 'own-test-saved':
      return `own-test:${happening.test}`;
    case 'test-left-out':
      return `left-out:${happening.test}`;
  }
}
