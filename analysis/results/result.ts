/**
 * The shape of a result, as `reduce --json` prints it. SI throughout, the unit in every record.
 * A value the data do not resolve is null with a flag that says why, never a number.
 */
import * as z from 'zod';
import { CODES, type CodeOf } from '../remarks/index.ts';

const flagCode = z.custom<CodeOf<'flag'>>(
  (code) => typeof code === 'string' && code in CODES && CODES[code as keyof typeof CODES].kind === 'flag',
  'not a flag code of analysis/remarks/codes.ts',
);

export const flagSchema = z.object({
  kind: flagCode,
  message: z.string(),
  fromSeconds: z.number().optional(),
  toSeconds: z.number().optional(),
});

/** Each part is a U95 contribution in the unit of the value. */
export const partsSchema = z.object({
  noise: z.number().optional(),
  repeatability: z.number().optional(),
  calibration: z.number().optional(),
  fit: z.number().optional(),
});

/** A condition a value holds for: SI number with unit, or words. */
export const conditionSchema = z.union([z.object({ value: z.number(), unit: z.string() }), z.string(), z.boolean()]);

export const resultQuantitySchema = z.object({
  name: z.string(),
  symbol: z.string().optional(),
  value: z.number().nullable(),
  unit: z.string(),
  u95: z.number().nullable(),
  /** both ends where the interval is not symmetric, or a bound */
  interval: z.tuple([z.number().nullable(), z.number().nullable()]).optional(),
  parts: partsSchema,
  conditions: z.record(z.string(), conditionSchema),
  flags: z.array(flagSchema),
});

export const cellSchema = z.union([z.number(), z.string(), z.boolean(), z.null()]);

export const resultTableSchema = z.object({
  name: z.string(),
  columns: z.array(z.object({ name: z.string(), unit: z.string() })),
  rows: z.array(z.array(cellSchema)),
});

export const resultSegmentSchema = z.object({
  file: z.string(),
  fromSeconds: z.number(),
  toSeconds: z.number(),
  role: z.string(),
  label: z.string().optional(),
  means: z.record(z.string(), z.number().nullable()),
});

export const comparisonSchema = z.object({
  what: z.string(),
  limit: z.number(),
  unit: z.string(),
  value: z.number().nullable(),
  u95: z.number().nullable(),
  outcome: z.enum(['shown', 'not shown', 'exceeded']),
  words: z.string(),
  /** a yardstick from a rule that does not bind this airplane: told, never what a result or a gate hangs on */
  reference: z.exactOptional(z.literal(true)),
});

export const provenanceSchema = z.object({
  files: z.array(z.object({ name: z.string(), sha256: z.string() })),
  configurationRevision: z.number().int().nullable(),
  methodVersion: z.string(),
});

export const alignmentSchema = z.object({
  file: z.string(),
  shiftSeconds: z.number(),
  driftSecondsPerHour: z.exactOptional(z.number()),
  driftU95: z.exactOptional(z.number()),
  u95: z.number(),
  by: z.string(),
  peak: z.number(),
  secondPeak: z.number(),
});

export const resultSchema = z.object({
  kind: z.string(),
  status: z.enum(['reduced', 'refused']),
  reason: z.string().optional(),
  /** code of the refusal, from remarks */
  code: z.string().optional(),
  mend: z.string().optional(),
  quantities: z.array(resultQuantitySchema),
  tables: z.array(resultTableSchema),
  segments: z.array(resultSegmentSchema),
  comparisons: z.array(comparisonSchema),
  flags: z.array(flagSchema),
  alignment: z.array(alignmentSchema).optional(),
  provenance: provenanceSchema,
  /** what `predict` and the charts need beyond the above, shaped by the reduction; SI */
  model: z.record(z.string(), z.unknown()).optional(),
});

export type Result = z.infer<typeof resultSchema>;
export type ResultQuantity = z.infer<typeof resultQuantitySchema>;
export type ResultTable = z.infer<typeof resultTableSchema>;
export type ResultSegment = z.infer<typeof resultSegmentSchema>;
export type Comparison = z.infer<typeof comparisonSchema>;
export type Provenance = z.infer<typeof provenanceSchema>;
export type Alignment = z.infer<typeof alignmentSchema>;
export type Cell = z.infer<typeof cellSchema>;
export type Condition = z.infer<typeof conditionSchema>;
