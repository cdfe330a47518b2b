/** What logs say: read, mapped, traced for a chart. */
import * as z from 'zod';
import { confirmMap } from '../../actions/confirm-map.ts';
import { readStoredLog } from '../../actions/read-stored-log.ts';
import { tracesOf } from '../../actions/traces-of.ts';
import { readingAnswer, readingSchema, tracesSchema } from './answers.ts';
import { type Api, bySchema, logParams, type Service } from './api.ts';

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

export function readingRoutes(api: Api, { desk }: Service): void {
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
}
