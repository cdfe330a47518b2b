/**
 * A card as data: what stands on it, before any page exists. Plain JSON, so that it can be kept as printed, turned
 * into an entry page, and printed again with the measured values in its boxes. Units are the airplane's own.
 */
import * as z from 'zod';
import { STAGES } from '../catalogue/index.ts';
import { lineSchema } from './line.ts';

/** What is expected in a box: predicted with its band, in the unit of the box. */
export const expectationSchema = z.strictObject({
  /** as printed, without the unit: `98 ± 3`, `95 to 103` */
  text: z.string().min(1),
  low: z.number().nullable(),
  high: z.number().nullable(),
  /** where it comes from */
  basis: z.string(),
});

/** A value written back into its box after the flight. */
export const measuredSchema = z.strictObject({
  text: z.string().min(1),
  /** outside the expected band, and which way */
  outside: z.enum(['above', 'below']).nullable(),
  /** number of its source in the list at the foot; null for a hand-written figure */
  source: z.int().positive().nullable(),
});

/** What is written into a box. */
export const writeSchema = z.enum(['number', 'words', 'clock', 'tick']);

const boxShape = {
  key: z.string().min(1),
  label: z.string().min(1),
  /** unit as printed; empty only for words, clock times and ticks */
  unit: z.string(),
  /** unit id of analysis/units, where the unit is one of the list */
  unitId: z.string().nullable(),
  /** glossary name, where it has one */
  quantity: z.string().nullable(),
  write: writeSchema,
  /** digits the box must hold */
  digits: z.int().min(0).max(60),
};

export const columnSchema = z.strictObject({
  ...boxShape,
  /** one expectation for the whole column; null where rows have their own, or there is none */
  expect: expectationSchema.nullable(),
  /** true where rows carry expectations, so that the column needs the second half */
  expectsByRow: z.boolean(),
  /** read once for all rows of a group: one box over them, under the key of the group's first row */
  perGroup: z.boolean().default(false),
});

export const cellSchema = z.strictObject({
  expect: expectationSchema.nullable(),
  measured: measuredSchema.nullable(),
});

export const rowSchema = z.strictObject({
  key: z.string().min(1),
  /** pre-printed target: minute, speed, altitude, heading, number of the run */
  head: lineSchema,
  /** key of the group it belongs to */
  group: z.string().nullable(),
  /** by column key; a column left out is a plain empty box */
  cells: z.record(z.string(), cellSchema),
});

export const groupSchema = z.strictObject({
  key: z.string().min(1),
  head: lineSchema,
  /** what was set down at its head, and the minute it began */
  measured: measuredSchema.nullable().default(null),
  began: measuredSchema.nullable().default(null),
});

/**
 * Head of the column of groups; with `write`, each group has room for a number set down at the briefing; with `minute`,
 * also for the minute of the clock at which it began.
 */
export const groupHeadSchema = z.strictObject({
  label: z.string(),
  unit: z.string(),
  write: z.boolean(),
  minute: z.boolean().default(false),
});

/** A few kinds of reading layout, chosen by what the readings need. */
export const LAYOUTS = [
  'minutes',
  'levels',
  'legs',
  'matrix',
  'repeats',
  'cycles',
  'pours',
  'headings',
  'list',
] as const;

export const tableSchema = z.strictObject({
  key: z.string().min(1),
  layout: z.enum(LAYOUTS),
  /** stands above the table; empty where the card has only one */
  title: z.string(),
  head: z.strictObject({ label: z.string(), unit: z.string() }),
  columns: z.array(columnSchema).min(1),
  groupHead: groupHeadSchema,
  groups: z.array(groupSchema),
  rows: z.array(rowSchema).min(1),
  /** what stands over all its rows by its title, by quantity: `cooling-fan-state` is `off` */
  holds: z.record(z.string(), z.string()).default({}),
});

/** What is expected minute by minute, printed to be watched, not to be written in. */
export const aheadSchema = z.strictObject({
  /** what runs on, with the units of both columns */
  title: z.string().min(1),
  rows: z.array(z.strictObject({ head: z.string().min(1), text: z.string().min(1) })).min(1),
});

export const boxSchema = z.strictObject({
  ...boxShape,
  expect: expectationSchema.nullable(),
  measured: measuredSchema.nullable(),
});

export const cardSchema = z.strictObject({
  format: z.literal('proveout-card-1'),
  id: z.string().min(1),
  title: z.string().min(1),
  aim: z.string(),
  stage: z.enum(STAGES),
  identity: z.strictObject({
    registration: z.string().min(1),
    airplane: z.string().min(1),
    /** true for the demo airplanes: said on every sheet */
    invented: z.boolean(),
    /** `Flight 6, card 2 of 4` */
    place: z.string(),
    /** number of the outing and its title, for the outline of the PDF */
    outing: z.string(),
    revision: z.string(),
    printed: z.string(),
  }),
  /** conditions to tick before start-up */
  gates: z.array(lineSchema),
  /** settings held during the readings; an empty setting is a box to write in */
  strip: z.array(z.strictObject({ item: z.string().min(1), setting: lineSchema })),
  steps: z.array(lineSchema).max(9),
  tables: z.array(tableSchema),
  boxes: z.array(boxSchema),
  /** what the expectations rest on, or that there are none */
  expectNote: z.string(),
  ahead: z.array(aheadSchema).default([]),
  stop: z.strictObject({
    /** a standing item holds for every run of its kind: it stands on a card's first sheet only */
    items: z.array(z.strictObject({ line: lineSchema, standing: z.boolean() })),
    /** what is done next */
    action: z.array(lineSchema),
    /** said in the frame where readings have a band */
    band: z.string(),
  }),
  after: z.array(lineSchema),
  /** clock, event mark, fuel: the way back to the log */
  log: z.array(boxSchema),
  missing: z.array(z.strictObject({ path: z.string(), meaning: z.string() })),
  /** of measured values, numbered from 1; empty on a blank card */
  sources: z.array(z.string()),
  /** measured values that left their band, in words */
  exceeded: z.array(z.strictObject({ way: z.enum(['above', 'below']), text: z.string().min(1) })).default([]),
});

export type Expectation = z.infer<typeof expectationSchema>;
export type MeasuredText = z.infer<typeof measuredSchema>;
export type Write = z.infer<typeof writeSchema>;
export type Column = z.infer<typeof columnSchema>;
export type CardCell = z.infer<typeof cellSchema>;
export type Row = z.infer<typeof rowSchema>;
export type GroupHead = z.infer<typeof groupHeadSchema>;
export type RowGroup = z.infer<typeof groupSchema>;
export type Layout = (typeof LAYOUTS)[number];
export type ReadingTable = z.infer<typeof tableSchema>;
export type Ahead = z.infer<typeof aheadSchema>;
export type Box = z.infer<typeof boxSchema>;
export type Card = z.infer<typeof cardSchema>;
