/** Recorder logs: received, read, mapped, given back byte for byte. */
import * as z from 'zod';
import { InputProblem, problem } from '../../../analysis/remarks/index.ts';
import { confirmMap } from '../../actions/confirm-map.ts';
import { logOf } from '../../actions/log-of.ts';
import { bringBack, putAway } from '../../actions/put-away.ts';
import { readStoredLog } from '../../actions/read-stored-log.ts';
import { receiveLog } from '../../actions/receive-log.ts';
import { tracesOf } from '../../actions/traces-of.ts';
import { storedLogSchema } from '../../book/book-state.ts';
import { rawLogPlace } from '../../book/raw-logs.ts';
import { readingAnswer, readingSchema, tracesSchema } from './answers.ts';
import { type Api, bookParams, bySchema, logParams, nothing, type Service } from './api.ts';

const times = z
  .string()
  .regex(/^-?\d+(\.\d+)?(,-?\d+(\.\d+)?)*$/, 'seconds joined by commas')
  .transform((text) => text.split(',').map(Number))
  .optional();

const tracesQuery = z.object({
  columns: z
    .union([z.string(), z.array(z.string())])
    .transform((one) => [one].flat())
    .optional(),
  from: z.coerce.number().optional(),
  to: z.coerce.number().optional(),
  width: z.coerce.number().int().min(10).max(10_000).optional(),
});

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

  api.get(
    '/books/:book/logs/:log',
    { schema: { params: logParams, querystring: z.object({ sample: times }), response: { 200: readingSchema } } },
    async ({ params, query }) => readingAnswer(await readStoredLog(desk, params.book, params.log), query.sample),
  );

  api.put(
    '/books/:book/logs/:log/map',
    { schema: { params: logParams, body: bySchema.extend({ map: z.unknown() }), response: { 200: readingSchema } } },
    async ({ params, body }) => readingAnswer(await confirmMap(desk, params.book, params.log, body.map, body)),
  );

  api.get(
    '/books/:book/logs/:log/traces',
    { schema: { params: logParams, querystring: tracesQuery, response: { 200: tracesSchema } } },
    async ({ params, query }) => ({ traces: await tracesOf(desk, params.book, params.log, query) }),
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
