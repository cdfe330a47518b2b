/** The program as an answer: `proveout program --json` and GET .../program give the same. */
import * as z from 'zod';

const stage = z.string();

const testSchema = z.object({
  id: z.string(),
  title: z.string(),
  stage,
  system: z.string(),
  position: z.int(),
  purpose: z.string(),
  because: z.string(),
  paths: z.array(z.string()),
  why: z.string(),
  needs: z.array(z.string()),
  unlocks: z.array(z.string()),
  produces: z.array(z.string()),
  consumes: z.array(z.string()),
  outing: z.int(),
  outings: z.array(z.int()),
  reduction: z.string().nullable(),
  reductions: z.array(z.string()),
  flightMinutes: z.number(),
  groundMinutes: z.number(),
  opens: z.string().nullable(),
  risk: z.number(),
  load: z.string(),
  missing: z.array(z.object({ path: z.string(), meaning: z.string() })),
  own: z.boolean(),
});

/** kg and m */
const loadPoint = z.object({
  mass: z.number(),
  massU95: z.number(),
  arm: z.number(),
  armU95: z.number(),
  chord: z.number().nullable(),
  inside: z.boolean(),
});

const outingSchema = z.object({
  number: z.int(),
  flight: z.int().nullable(),
  kind: z.enum(['shop', 'ground', 'flight']),
  title: z.string(),
  stage,
  tests: z.array(z.string()),
  parts: z.array(z.object({ test: z.string(), part: z.int(), of: z.int() })),
  minutesOnCondition: z.number(),
  minutesTotal: z.number(),
  why: z.string(),
  opens: z.string().nullable(),
  load: z.string(),
  loading: z
    .object({
      words: z.string(),
      takeoff: loadPoint.nullable(),
      landing: loadPoint.nullable(),
      /** m3 */
      fuel: z.number().nullable(),
      added: z.array(z.object({ name: z.string(), mass: z.number(), arm: z.number() })),
      inside: z.boolean().nullable(),
    })
    .nullable(),
  /** m3 */
  fuel: z
    .object({
      takeoff: z.number(),
      burn: z.number(),
      reserve: z.number(),
      usable: z.number(),
      words: z.string(),
    })
    .nullable(),
  /** m */
  height: z.number().nullable(),
  daylight: z.boolean(),
  remarks: z.array(z.string()),
});

export const programSchema = z.object({
  airplane: z.object({ name: z.string(), registration: z.string() }),
  stages: z.array(z.object({ stage, title: z.string(), tests: z.array(testSchema) })),
  order: z.array(z.string()),
  notApplicable: z.array(
    z.object({
      id: z.string(),
      title: z.string(),
      stage,
      reason: z.string(),
      paths: z.array(z.string()),
      by: z.enum(['airplane', 'person']),
    }),
  ),
  outings: z.array(outingSchema),
  hours: z.object({
    kind: z.enum(['fixed-hours', 'task-list']),
    assigned: z.number().nullable(),
    onCondition: z.number(),
    planned: z.number(),
    ground: z.number(),
    flights: z.number(),
    overhead: z.number(),
    climbs: z.number(),
    newThings: z.number(),
    difference: z.number().nullable(),
    words: z.string(),
    tasks: z.array(z.object({ title: z.string(), tests: z.array(z.string()), missing: z.array(z.string()) })),
  }),
  gates: z.array(
    z.object({
      id: z.string(),
      title: z.string(),
      before: stage,
      after: stage,
      evidence: z.array(z.object({ test: z.string(), title: z.string(), asks: z.string() })),
      typicalNoGo: z.string(),
    }),
  ),
  operatingLimitations: z.string(),
});
