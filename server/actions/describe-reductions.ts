/** The reductions as a script sees them: kinds, what they need, the schemas of what they take. */
import * as z from 'zod';
import type { Reduction } from '../../analysis/reductions/index.ts';
import { knownReduction } from './reduce-recording.ts';

export interface ReductionSummary {
  kind: string;
  title: string;
  answers: string;
  serves: string[];
  needs: string[];
  uses: string[];
  roles: { role: string; meaning: string }[];
  predicts: boolean;
  methodVersion: string;
}

export async function listReductions(): Promise<ReductionSummary[]> {
  const { REDUCTIONS } = await import('../../analysis/reductions/index.ts');
  return REDUCTIONS.map(summaryOf);
}

/** @throws InputProblem `unknown-kind` */
export async function describeReduction(kind: string) {
  const reduction = await knownReduction(kind);
  return {
    ...summaryOf(reduction),
    points: schemaOf(reduction.pointsSchema),
    options: schemaOf(reduction.optionsSchema),
    conditions: reduction.conditionsSchema ? schemaOf(reduction.conditionsSchema) : null,
    note: reduction.note,
  };
}

function summaryOf({ kind, title, answers, serves, needs, uses, roles, predict, note }: Reduction): ReductionSummary {
  return {
    kind,
    title,
    answers,
    serves: [...serves],
    needs: [...needs],
    uses: [...uses],
    roles: [...roles],
    predicts: predict !== undefined,
    methodVersion: note.versions[0]?.version ?? '',
  };
}

function schemaOf(schema: z.ZodType): unknown {
  return z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' });
}
