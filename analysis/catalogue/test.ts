/**
 * A test as data: the shape every catalogue entry and every test of a person's own has.
 *
 * Texts carry references to this airplane's numbers, `{{kind path}}`, and general figures in their own unit,
 * `{{show kind value unit}}`; both are printed in the units of the airplane's instruments (reference.ts, lines.ts).
 * A text may hold pieces that stand only where a condition holds, so that a card never names what is not fitted.
 */
import * as z from 'zod';
import { CITATIONS } from './citations.ts';
import { type Condition, conditionSchema } from './condition.ts';
import { MEASURES } from './measures.ts';
import { STAGES, SYSTEMS } from './stage.ts';

/** Part of a text that stands only where its condition holds. */
export interface ConditionalPiece {
  readonly when: Condition;
  readonly text: string;
}

export type Text = string | readonly (string | ConditionalPiece)[];

/** A line of a card; with `when`, only for airplanes where it holds. */
export type Line = Text | { readonly when: Condition; readonly text: Text };

const words = z.string().min(1).max(400);
const piece = z.strictObject({ when: conditionSchema, text: words });
const textSchema: z.ZodType<Text> = z.union([words, z.array(z.union([words, piece])).min(1)]);
const lineSchema: z.ZodType<Line> = z.union([textSchema, z.strictObject({ when: conditionSchema, text: textSchema })]);
const lines = z.array(lineSchema).default([]);

export const MARKS = ['read', 'memory', 'practice', 'configuration'] as const;
export type Mark = (typeof MARKS)[number];

/** Key of the catalogue's list of citations, or a person's own source in full. */
const sourceSchema = z.union([
  z.string().refine((key) => Object.hasOwn(CITATIONS, key), 'a key of analysis/catalogue/citations.ts'),
  z.strictObject({ says: words, mark: z.enum(MARKS) }),
]);
export type TestSource = z.output<typeof sourceSchema>;

/** One number or word written down, and when. Either a measured kind (its unit follows the airplane) or plain words. */
export const readingSchema = z
  .strictObject({
    what: textSchema,
    /** glossary name, with #n where the airplane has several */
    quantity: z.string().optional(),
    measure: z.enum(MEASURES).optional(),
    /** what is written where it is not a measured kind: yes/no, initials, text */
    unit: z.string().min(1).max(30).optional(),
    at: z.string().min(1).max(60),
    when: conditionSchema.optional(),
  })
  .refine(
    (one) => (one.measure === undefined) !== (one.unit === undefined),
    'a reading has a measure or a unit, not both',
  );

export const KINDS = [
  'cooling-ground',
  'cooling-climb',
  'cooling-flight',
  'airspeed',
  'climb',
  'stall',
  'takeoff',
  'landing',
  'level-speed',
  'glide',
  'gear',
  'fuel-flow',
  'fuel-transfer',
  'fuel-sender',
  'flow-meter',
  'trim-stability',
  'dynamic-mode',
  'engine-runup',
  'electrical',
  'compass',
  'weight-balance',
] as const;

/** Loading a test is flown at, from the lightest demand to the hardest (loads.ts gives each its meaning). */
export const LOADS = [
  'any',
  'first-flight',
  'light-forward',
  'payload-steps',
  'gross',
  'light-and-gross',
  'forward-limit',
  'aft-steps',
  'corners',
] as const;

/** What the order and the packing need to know beyond the text. */
export const planningSchema = z.strictObject({
  load: z.enum(LOADS).default('any'),
  /** 0 a measurement inside what was shown, to 5 the cards that have killed; own judgement, common practice */
  risk: z.int().min(0).max(5).default(0),
  /** the new thing this test does for the first time; at most one such test in a flight */
  opens: z.string().min(1).max(80).optional(),
  /** nothing else is flown on this outing */
  alone: z.boolean().default(false),
  /** separate outings it takes, each on its own flight */
  parts: z.int().min(1).max(8).default(1),
  /** height it is flown at, above ground */
  height: z.strictObject({ value: z.number().nonnegative(), unit: z.enum(['ft', 'm']) }).optional(),
  /** what the next test needs of it is seen by the pilot: no reduction has to come between, one flight may hold both */
  judgedInFlight: z.boolean().default(false),
  /** needs daylight and visual conditions; false for what is done in a hangar */
  daylight: z.boolean().default(true),
});

export const testSchema = z.strictObject({
  id: z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'small letters, digits and hyphens'),
  title: textSchema,
  stage: z.enum(STAGES),
  system: z.enum(SYSTEMS),
  applies: conditionSchema.optional(),
  purpose: textSchema,
  /** tests that come first; one that does not apply hands on its own */
  needs: z.array(z.string()).default([]),
  /** data made here, and data used here; made before used */
  produces: z.array(z.string()).default([]),
  consumes: z.array(z.string()).default([]),
  conditions: z
    .strictObject({
      wind: textSchema.optional(),
      weather: textSchema.optional(),
      weight: textSchema.optional(),
      cg: textSchema.optional(),
      fuel: textSchema.optional(),
      altitude: textSchema.optional(),
      crew: textSchema.optional(),
    })
    .prefault({}),
  /** ticked before start-up */
  setup: lines,
  /** done in the cockpit or at the airplane, in order */
  steps: lines,
  /** done after landing or shut-down */
  after: lines,
  readings: z.array(readingSchema).default([]),
  /** quantities worth logging */
  channels: z.array(z.string()).default([]),
  pass: z.array(z.strictObject({ when: conditionSchema.optional(), text: textSchema, source: sourceSchema })).min(1),
  stop: z.array(lineSchema).min(1),
  /** the action after a stop */
  action: lines,
  hazards: z
    .array(z.strictObject({ when: conditionSchema.optional(), hazard: textSchema, mitigation: textSchema }))
    .default([]),
  reductions: z.array(z.enum(KINDS)).default([]),
  /** on condition, all parts together, without take-off, transit and landing */
  flightMinutes: z.number().nonnegative().default(0),
  groundMinutes: z.number().nonnegative().default(0),
  blocks: z.string().min(1).max(120),
  planning: planningSchema.prefault({}),
  sources: z.array(sourceSchema).default([]),
});

/** A test as written in the data files and in a person's own file. */
export type TestData = z.input<typeof testSchema>;
/** A test as the program and the cards use it, with its defaults filled in. */
export type CatalogueTest = z.output<typeof testSchema>;
export type Reading = z.output<typeof readingSchema>;
export type Planning = z.output<typeof planningSchema>;
export type Kind = (typeof KINDS)[number];
export type Load = (typeof LOADS)[number];
