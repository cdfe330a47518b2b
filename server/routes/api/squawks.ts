/** Squawks: written down when found, settled with what was done. */
import * as z from 'zod';
import { openSquawk } from '../../actions/open-squawk.ts';
import { settleSquawk } from '../../actions/settle-squawk.ts';
import { type Api, bookParams, bySchema, nothing, numbered, numberParams, type Service } from './api.ts';

export function squawkRoutes(api: Api, { desk }: Service): void {
  api.post(
    '/books/:book/squawks',
    {
      schema: {
        params: bookParams,
        body: bySchema.extend({ text: z.string().min(1).max(4000) }),
        response: { 201: numbered },
      },
    },
    async ({ params, body }, reply) => reply.code(201).send({ number: openSquawk(desk, params.book, body.text, body) }),
  );

  api.post(
    '/books/:book/squawks/:number/settling',
    {
      schema: {
        params: numberParams,
        body: bySchema.extend({ open: z.boolean(), how: z.string().max(4000) }),
        response: nothing,
      },
    },
    async ({ params, body }, reply) => {
      settleSquawk(desk, params.book, params.number, body, body);
      return reply.code(204).send(null);
    },
  );
}
