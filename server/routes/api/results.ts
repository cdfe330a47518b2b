/** Results: reduced, looked at, decided, used to predict. */
import * as z from 'zod';
import { resultSchema } from '../../../analysis/results/index.ts';
import { segmentEditSchema } from '../../../analysis/segments/index.ts';
import { decideResult } from '../../actions/decide-result.ts';
import { predict } from '../../actions/predict.ts';
import { putAway } from '../../actions/put-away.ts';
import { reduce, reduceUnstored } from '../../actions/reduce.ts';
import { resultOf } from '../../actions/result-of.ts';
import { storedResultSchema } from '../../book/book-state.ts';
import { decisionSchema } from '../../book/entry.ts';
import { COSTLY } from '../../plugins/rate-limit.ts';
import { questionSchema } from './answers.ts';
import { type Api, bookParams, bySchema, nothing, numberParams, type Service } from './api.ts';

export const reduceBody = bySchema.extend({
  kind: z.string(),
  logs: z.array(z.string()).max(8).default([]),
  points: z.unknown().optional(),
  segments: z.array(segmentEditSchema).optional(),
  options: z.record(z.string(), z.unknown()).optional(),
  calibration: z.int().nullable().optional(),
  shifts: z.record(z.string(), z.number()).optional(),
  tests: z.array(z.string()).optional(),
});

const questions = z.object({ answer: z.literal('questions'), questions: z.array(questionSchema) });
const stored = z.object({ answer: z.literal('stored'), stored: storedResultSchema });
const looked = z.object({ answer: z.literal('result'), result: resultSchema, reads: z.array(z.string()) });

export function resultRoutes(api: Api, { desk }: Service): void {
  api.post(
    '/books/:book/results',
    {
      config: COSTLY,
      schema: { params: bookParams, body: reduceBody, response: { 200: z.union([stored, questions]) } },
    },
    async ({ params, body }) => reduce(desk, params.book, body, body),
  );

  api.post(
    '/books/:book/results/trial',
    {
      config: COSTLY,
      schema: { params: bookParams, body: reduceBody, response: { 200: z.union([looked, questions]) } },
    },
    async ({ params, body }) => (await reduceUnstored(desk, params.book, body)).reduced,
  );

  api.get(
    '/books/:book/results/:number',
    { schema: { params: numberParams, response: { 200: storedResultSchema } } },
    async ({ params }) => resultOf(desk, params.book, params.number),
  );

  api.post(
    '/books/:book/results/:number/decision',
    {
      schema: {
        params: numberParams,
        body: bySchema.extend({ decision: decisionSchema, note: z.string().max(4000).default('') }),
        response: { 200: storedResultSchema },
      },
    },
    async ({ params, body }) => decideResult(desk, params.book, params.number, body, body),
  );

  api.post(
    '/books/:book/results/:number/prediction',
    { schema: { params: numberParams, body: z.object({ conditions: z.unknown() }), response: { 200: z.unknown() } } },
    async ({ params, body }) => predict(desk, params.book, params.number, body.conditions),
  );

  api.delete(
    '/books/:book/results/:number',
    { schema: { params: numberParams, response: nothing } },
    async ({ params }, reply) => {
      putAway(desk, params.book, { what: 'result', id: params.number });
      return reply.code(204).send(null);
    },
  );
}
