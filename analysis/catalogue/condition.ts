/**
 * A condition on the airplane's facts, as data: evaluated, put in words, and traced to the configuration paths it
 * reads (condition-words.ts). No condition at all means: for every airplane.
 */
import * as z from 'zod';
import { FACTS } from '../airplane/index.ts';

export type Condition =
  | { readonly fact: string }
  | { readonly fact: string; readonly is: string | number | boolean }
  | { readonly fact: string; readonly atLeast: number }
  | { readonly all: readonly Condition[] }
  | { readonly any: readonly Condition[] }
  | { readonly not: Condition };

const names = new Set(FACTS.map((fact) => fact.name));

const fact = z.string().refine((name) => names.has(name), 'a fact of analysis/airplane/facts.ts');

export const conditionSchema: z.ZodType<Condition> = z.lazy(() =>
  z.union([
    z.strictObject({ fact, is: z.union([z.string(), z.number(), z.boolean()]) }),
    z.strictObject({ fact, atLeast: z.number() }),
    z.strictObject({ fact }),
    z.strictObject({ all: z.array(conditionSchema).min(1) }),
    z.strictObject({ any: z.array(conditionSchema).min(1) }),
    z.strictObject({ not: conditionSchema }),
  ]),
);
