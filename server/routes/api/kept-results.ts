/** Kept results: shown, decided, used to predict, put away. */
import * as z from 'zod';
import { consequencesOf } from '../../actions/consequences-of.ts';
import { decideResult } from '../../actions/decide-result.ts';
import { predict } from '../../actions/predict.ts';
import { putAway } from '../../actions/put-away.ts';
import { resultOf } from '../../actions/result-of.ts';
import { storedResultSchema } from '../../book/book-state.ts';
import { decisionSchema } from '../../book/entry.ts';
import { type Api, bySchema, nothing, numberParams, type Service } from './api.ts';

const touched = z.array(z.object({ number: z.int(), kind: z.string(), because: z.string() }));
const consequence = z.object({ inForce: z.int().nullable(), stale: touched, standAgain: touched });

/** What a decision on an airspeed result would do to others, before it is made. */
const consequencesSchema = z.object({
  inForce: z.int().nullable(),
  accepting: consequence.nullable(),
  takingBack: consequence.nullable(),
});

export function keptResultRoutes(api: Api, { desk }: Service): void {
  api.get(
    '/books/:book/results/:number',
    { schema: { params: numberParams, response: { 200: storedResultSchema } } },
    async ({ params }) => resultOf(desk, params.book, params.number),
  );

  api.get(
    '/books/:book/results/:number/consequences',
    { schema: { params: numberParams, response: { 200: consequencesSchema } } },
    async ({ params }) => consequencesOf(desk, params.book, params.number),
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
