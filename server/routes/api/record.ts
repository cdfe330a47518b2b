/** What a person writes down beside the results: tests done without a reduction, and hours. */
import * as z from 'zod';
import { logHours } from '../../actions/log-hours.ts';
import { markTest } from '../../actions/mark-test.ts';
import { markSchema } from '../../book/entry.ts';
import { type Api, bookParams, bySchema, nothing, numbered, type Service } from './api.ts';

const hoursBody = bySchema.extend({
  date: z.iso.date(),
  outing: z.string().max(80).default(''),
  flightSeconds: z.number().nonnegative(),
  engineSeconds: z.number().nonnegative(),
  landings: z.int().nonnegative(),
  note: z.string().max(2000).default(''),
});

export function recordRoutes(api: Api, { desk }: Service): void {
  api.put(
    '/books/:book/tests/:test/mark',
    {
      schema: {
        params: bookParams.extend({ test: z.string() }),
        body: bySchema.extend({ mark: markSchema, note: z.string().max(4000).default('') }),
        response: nothing,
      },
    },
    async ({ params, body }, reply) => {
      await markTest(desk, params.book, params.test, body.mark, body.note, body);
      return reply.code(204).send(null);
    },
  );

  api.post(
    '/books/:book/hours',
    { schema: { params: bookParams, body: hoursBody, response: { 201: numbered } } },
    async ({ params, body: { who, why, ...line } }, reply) =>
      reply.code(201).send({ number: logHours(desk, params.book, line, { who, why }) }),
  );
}
