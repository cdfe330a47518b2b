/** Cards with their readings written in: begun, written on, reduced, put away. */
import * as z from 'zod';
import { cardSchema } from '../../../analysis/cards/index.ts';
import { fileReturn } from '../../actions/file-return.ts';
import { putAway } from '../../actions/put-away.ts';
import { reduceWritten } from '../../actions/reduce-written.ts';
import { beginWriting, writeReadings } from '../../actions/write-readings.ts';
import { storedResultSchema } from '../../book/book-state.ts';
import { writtenCard, writtenSummaries } from '../../book/written-cards.ts';
import { COSTLY } from '../../plugins/rate-limit.ts';
import { type Api, bookParams, bySchema, nothing, numberParams, type Service } from './api.ts';

const boxesSchema = z.record(z.string().max(200), z.string().max(2000));

const summarySchema = z.object({
  number: z.int(),
  test: z.string(),
  title: z.string(),
  outing: z.string(),
  place: z.string(),
  revision: z.string(),
  printed: z.string(),
  filled: z.int(),
  of: z.int(),
  at: z.string(),
  changedAt: z.string(),
});

const writtenSchema = z.object({
  number: z.int(),
  card: cardSchema,
  document: z.string(),
  paper: z.string(),
  boxes: z.record(z.string(), z.object({ text: z.string(), at: z.string(), who: z.string() })),
  at: z.string(),
  changedAt: z.string(),
  lastEntry: z.int(),
});

const kept = z.object({ number: z.int(), changedAt: z.string(), lastEntry: z.int() });

export function writtenRoutes(api: Api, { desk }: Service): void {
  api.get(
    '/books/:book/written',
    { schema: { params: bookParams, response: { 200: z.object({ written: z.array(summarySchema) }) } } },
    async ({ params }) => ({ written: writtenSummaries(desk.shelf.open(params.book)) }),
  );

  api.post(
    '/books/:book/written',
    {
      schema: {
        params: bookParams,
        body: bySchema.extend({ test: z.string(), document: z.string().optional(), boxes: boxesSchema }),
        response: { 200: kept },
      },
    },
    async ({ params, body }) => beginWriting(desk, params.book, body, body.boxes, body),
  );

  api.get(
    '/books/:book/written/:number',
    { schema: { params: numberParams, response: { 200: writtenSchema } } },
    async ({ params }) => writtenCard(desk.shelf.open(params.book), params.number),
  );

  api.put(
    '/books/:book/written/:number',
    {
      schema: { params: numberParams, body: bySchema.extend({ boxes: boxesSchema }), response: { 200: kept } },
    },
    async ({ params, body }) => writeReadings(desk, params.book, params.number, body.boxes, body),
  );

  api.post(
    '/books/:book/written/:number/results',
    {
      config: COSTLY,
      schema: {
        params: numberParams,
        body: bySchema.extend({ kind: z.string(), options: z.record(z.string(), z.unknown()).optional() }),
        response: { 200: z.object({ stored: z.array(storedResultSchema), remarks: z.array(z.string()) }) },
      },
    },
    async ({ params, body }) => reduceWritten(desk, params.book, params.number, body, body),
  );

  api.post(
    '/books/:book/written/:number/return',
    {
      schema: {
        params: numberParams,
        body: bySchema.extend({ date: z.iso.date() }),
        response: { 200: z.object({ hours: z.int(), squawks: z.array(z.int()) }) },
      },
    },
    async ({ params, body }) => fileReturn(desk, params.book, params.number, body.date, body),
  );

  api.delete(
    '/books/:book/written/:number',
    { schema: { params: numberParams, response: nothing } },
    async ({ params }, reply) => {
      putAway(desk, params.book, { what: 'written', id: params.number });
      return reply.code(204).send(null);
    },
  );
}
