/** The reductions there are: what each answers, needs and how it works. */
import * as z from 'zod';
import { describeReduction, listReductions } from '../../actions/describe-reductions.ts';
import type { Api } from './api.ts';

const summary = z.object({
  kind: z.string(),
  title: z.string(),
  answers: z.string(),
  serves: z.array(z.string()),
  needs: z.array(z.string()),
  uses: z.array(z.string()),
  roles: z.array(z.object({ role: z.string(), meaning: z.string() })),
  predicts: z.boolean(),
  methodVersion: z.string(),
});

const description = summary.extend({
  /** JSON Schemas of POINTS.json's points, of the options, of the conditions of a prediction */
  points: z.unknown(),
  options: z.unknown(),
  conditions: z.unknown(),
  note: z.unknown(),
});

export function reductionRoutes(api: Api): void {
  api.get('/reductions', { schema: { response: { 200: z.object({ reductions: z.array(summary) }) } } }, async () => ({
    reductions: await listReductions(),
  }));
  api.get(
    '/reductions/:kind',
    { schema: { params: z.object({ kind: z.string() }), response: { 200: description } } },
    async ({ params }) => describeReduction(params.kind),
  );
}
