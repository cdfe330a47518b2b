/** What the next run should show, asked on the page of a result: conditions as a form, and the answer with its band. */
import * as z from 'zod';
import { type Prediction, reductionOf } from '../../analysis/reductions/index.ts';
import { type FieldProblem, shapedFields, type Typed } from '../forms/airplane-form.ts';
import { schemaFields } from '../forms/schema-shape.ts';
import { fieldPart } from '../parts/field.view.ts';
import { flagGroup, flagsByKind, flagsInWords } from '../parts/remarks.view.ts';
import { tablePart } from '../parts/table.view.ts';
import { nameInWords } from '../words/list.ts';
import { quantityInWords, quantityPart } from '../words/quantity.ts';
import { resultTableInWords } from '../words/result-table.ts';
import type { KeptResult, PageContext } from './kept.ts';

const answerPart = z.strictObject({
  reason: z.string(),
  rows: z.array(z.strictObject({ name: z.string(), quantity: quantityPart, band: z.string(), why: z.string() })),
  tables: z.array(tablePart),
  flags: z.array(flagGroup),
});

export const predictPart = z
  .strictObject({ action: z.string(), fields: z.array(fieldPart), answer: answerPart.nullable() })
  .nullable();
export type PredictPart = z.infer<typeof predictPart>;

/** What was asked, and what came of it. */
export interface AskedPrediction {
  typed: Typed;
  problems: readonly FieldProblem[];
  answer: Prediction | null;
}

/** The part of a result's page; null where its kind predicts nothing, or there is nothing to predict from. */
export function prediction(
  kept: KeptResult,
  asked: AskedPrediction | undefined,
  { units }: PageContext,
  path: string,
): PredictPart {
  const reduction = reductionOf(kept.kind);
  if (!reduction?.predict || !reduction.conditionsSchema || kept.result.status === 'refused') return null;
  const { typed = new Map(), problems = [], answer = null } = asked ?? {};
  const json = { instruments: { units } };
  return {
    action: `${path}#predict`,
    fields: shapedFields(schemaFields(reduction.conditionsSchema), 'conditions', json, typed, problems),
    answer: answer && {
      reason: answer.reason ?? '',
      rows: answer.quantities.map(({ name, unit, value, low, high, why }) => {
        const part = (one: number | null) => quantityInWords(one, unit, { name, why: 'no value' }, units);
        const [from, to] = [part(low), part(high)];
        return {
          name: nameInWords(name),
          quantity: part(value),
          band: low === null || high === null ? '' : `${from.number} to ${to.number} ${to.unit}`,
          why,
        };
      }),
      tables: answer.tables.map((table) => resultTableInWords(table, units, { samples: () => '', csv: '' })),
      flags: flagsByKind(flagsInWords(answer.flags)),
    },
  };
}
