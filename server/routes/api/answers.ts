/** Answers that several routes give, as schemas: what a script may rely on. */
import * as z from 'zod';
import { mapSchema } from '../../../analysis/logs/log-map.ts';
import { readReport } from '../../../analysis/logs/read-report.ts';
import type { StoredReading } from '../../actions/read-stored-log.ts';
import { storedLogSchema } from '../../book/book-state.ts';

export const questionSchema = z.object({
  file: z.string().optional(),
  id: z.string(),
  question: z.string(),
  choices: z.array(z.string()),
  because: z.string(),
  column: z.string().optional(),
  concerns: z.array(z.string()).optional(),
});

const flagSchema = z.object({
  kind: z.string(),
  message: z.string(),
  fromSeconds: z.number().optional(),
  toSeconds: z.number().optional(),
});

/** `read --json`, as interfaces write it. */
export const reportSchema = z.object({
  file: z.string(),
  accepted: z.enum(['yes', 'no', 'ask']),
  problems: z.array(
    z.object({
      code: z.string(),
      message: z.string(),
      where: z.object({ line: z.int().optional(), column: z.string().optional(), field: z.string().optional() }),
    }),
  ),
  questions: z.array(questionSchema),
  dialect: z.object({
    encoding: z.string().nullable(),
    delimiter: z.string().nullable(),
    decimal: z.enum(['.', ',']).nullable(),
    headerLine: z.int().nullable(),
    unitsLine: z.int().nullable(),
    preamble: z.array(z.string()),
  }),
  rows: z.int(),
  rowsRejected: z.array(z.object({ line: z.int(), reason: z.string() })),
  time: z.object({
    start: z.string().nullable(),
    zone: z.string(),
    durationSeconds: z.number(),
    sampleRateHz: z.number(),
    segments: z.array(z.object({ fromSeconds: z.number(), toSeconds: z.number(), reason: z.string() })),
  }),
  channels: z.array(
    z.object({
      column: z.string(),
      name: z.string(),
      quantity: z.string().nullable(),
      unit: z.string().nullable(),
      confidence: z.number(),
      why: z.string(),
      valid: z.number(),
      flags: z.array(flagSchema),
      samplesUnit: z.string().nullable().optional(),
      samples: z.array(z.object({ t: z.number(), value: z.number().nullable() })).optional(),
    }),
  ),
  flags: z.array(flagSchema),
});

export const readingSchema = z.object({
  log: storedLogSchema,
  map: mapSchema.nullable(),
  mapFrom: z.enum(['given', 'confirmed', 'saved', 'none']),
  savedOn: z.string().nullable(),
  layout: z.string().nullable(),
  report: reportSchema,
});

/** A reading as JSON: everything but the columns themselves. */
export function readingAnswer(reading: StoredReading, sampleSeconds?: number[]): z.output<typeof readingSchema> {
  const { outcome, ...about } = reading;
  return { ...about, report: { ...readReport(outcome, sampleSeconds) } };
}

export const tracesSchema = z.object({
  traces: z.array(
    z.object({
      column: z.string(),
      quantity: z.string().nullable(),
      unit: z.string().nullable(),
      x: z.array(z.number()),
      y: z.array(z.number().nullable()),
    }),
  ),
});
