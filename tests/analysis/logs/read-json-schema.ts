/** `read --json` as the interfaces write it: nothing missing, nothing of another shape, flags of the listed kinds only. */
import * as z from 'zod';

const CHANNEL_FLAGS = [
  'gap', 'missing-values', 'stuck', 'spike', 'saturated', 'disconnected', 'non-numeric', 'unit-not-stated',
  'unit-contradictory', 'implausible-unit',
]; // biome-ignore format: a list

const FILE_FLAGS = [
  'midnight', 'no-date', 'zone-unknown', 'date-ambiguous', 'clock-jump', 'duplicate-timestamps', 'rate-change',
  'power-cycle', 'elapsed-reset', 'repeated-header', 'truncated-last-line', 'nul-bytes', 'ragged-rows',
  'duplicate-columns', 'formula-text', 'unsafe-name', 'gap',
]; // biome-ignore format: a list

const seconds = z.number().nonnegative();
const zone = z.string().regex(/^(UTC|unknown|[+-]\d\d:\d\d)$/);

const channel = z
  .strictObject({
    column: z.string(),
    name: z.string(),
    quantity: z
      .string()
      .regex(/^[a-z-]+(#[1-9]\d?)?$/)
      .nullable(),
    unit: z.string().nullable(),
    confidence: z.number().min(0).max(1),
    why: z.string(),
    valid: z.number().min(0).max(1),
    flags: z.array(
      z.strictObject({
        kind: z.enum(CHANNEL_FLAGS),
        fromSeconds: seconds,
        toSeconds: seconds,
        message: z.string().min(10),
      }),
    ),
    samplesUnit: z.string().nullable(),
    samples: z.array(z.strictObject({ t: z.number(), value: z.number().nullable() })),
  })
  .refine((one) => one.quantity === null || one.why.length > 10, 'a guess has its reason');

export const readJson = z
  .strictObject({
    file: z.string(),
    accepted: z.enum(['yes', 'no', 'ask']),
    problems: z.array(
      z.strictObject({
        code: z.string(),
        message: z.string().min(30),
        where: z.strictObject({
          line: z.int().optional(),
          column: z.string().optional(),
          field: z.string().optional(),
        }),
      }),
    ),
    questions: z.array(
      z.strictObject({
        id: z.string(),
        question: z.string(),
        choices: z.array(z.string()),
        because: z.string().min(10),
      }),
    ),
    dialect: z.strictObject({
      encoding: z.string().nullable(),
      delimiter: z.string().nullable(),
      decimal: z.enum(['.', ',']).nullable(),
      headerLine: z.int().positive().nullable(),
      unitsLine: z.int().positive().nullable(),
      preamble: z.array(z.string()),
    }),
    rows: z.int().nonnegative(),
    rowsRejected: z.array(z.strictObject({ line: z.int().positive(), reason: z.string().min(5) })),
    time: z.strictObject({
      start: z
        .string()
        .regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?(Z|[+-]\d\d:\d\d)$/)
        .nullable(),
      zone,
      durationSeconds: seconds,
      sampleRateHz: seconds,
      segments: z.array(z.strictObject({ fromSeconds: seconds, toSeconds: seconds, reason: z.string().min(5) })),
    }),
    channels: z.array(channel),
    flags: z.array(
      z.strictObject({
        kind: z.enum(FILE_FLAGS),
        message: z.string().min(5),
        fromSeconds: seconds.optional(),
        toSeconds: seconds.optional(),
      }),
    ),
  })
  .refine((one) => one.accepted !== 'no' || one.problems.length > 0, 'a refusal has its reason')
  .refine((one) => (one.accepted === 'ask') === one.questions.length > 0, 'what asks has a question')
  .refine((one) => one.accepted === 'no' || one.rows === 0 || one.channels.length > 0, 'rows have channels')
  .refine(({ channels }) => new Set(channels.map(({ column }) => column)).size === channels.length, 'names differ')
  .refine(({ time }) => time.segments.every((one) => one.toSeconds >= one.fromSeconds), 'segments run forward')
  .refine(({ accepted, time, rows }) => accepted !== 'yes' || rows < 2 || time.sampleRateHz > 0, 'rows have a rate');
