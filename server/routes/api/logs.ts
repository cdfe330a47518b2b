/** Recorder logs: received, put away, given back byte for byte. */
import * as z from 'zod';
import { InputProblem, problem } from '../../../analysis/remarks/index.ts';
import { logOf } from '../../actions/log-of.ts';
import { bringBack, putAway } from '../../actions/put-away.ts';
import { receiveLog } from '../../actions/receive-log.ts';
import { storedLogSchema } from '../../book/book-state.ts';
import { rawLogPlace } from '../../book/raw-logs.ts';
import { type Api, bookParams, bySchema, logParams, nothing, type Service } from './api.ts';

export function logRoutes(api: Api, { desk }: Service): void {
  api.post(
    '/books/:book/logs',
    {
      schema: {
        params: bookParams,
        querystring: bySchema,
        consumes: ['multipart/form-data'],
        response: { 201: z.object({ log: storedLogSchema, known: z.boolean() }) },
      },
    },
    async (request, reply) => {
      const part = await request.file();
      if (!part) throw new InputProblem([problem('bad-request', 'The request holds no file.')]);
      const received = await receiveLog(desk, request.params.book, part.file, part.filename, request.query);
      return reply.code(201).send(received);
    },
  );

  api.get('/books/:book/logs/:log/raw', { schema: { params: logParams } }, async ({ params }, reply) => {
    const { log } = logOf(desk, params.book, params.log);
    return reply.download(`${params.book}/${rawLogPlace(log.id)}`, log.name);
  });

  api.delete(
    '/books/:book/logs/:log',
    { schema: { params: logParams, response: nothing } },
    async ({ params }, reply) => {
      putAway(desk, params.book, { what: 'log', id: params.log });
      return reply.code(204).send(null);
    },
  );

  api.post(
    '/books/:book/logs/:log/return',
    { schema: { params: logParams, response: nothing } },
    async ({ params }, reply) => {
      bringBack(desk, params.book, { what: 'log', id: params.log });
      return reply.code(204).send(null);
    },
  );
}
