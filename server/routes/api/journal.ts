/** The journal: read, checked, and undone by new entries. */
import * as z from 'zod';
import { journalOf } from '../../actions/journal-of.ts';
import { takeBack } from '../../actions/take-back.ts';
import { verifyBook } from '../../actions/verify-book.ts';
import { entrySchema } from '../../book/entry.ts';
import { COSTLY } from '../../plugins/rate-limit.ts';
import { type Api, bookParams, bySchema, type Service } from './api.ts';

const verification = z.object({
  entries: z.int(),
  documents: z.int(),
  logs: z.int(),
  head: z.string(),
  broken: z.array(z.string()),
});

const page = z.object({
  before: z.coerce.number().int().positive().optional(),
  count: z.coerce.number().int().min(1).max(500).default(100),
});

export function journalRoutes(api: Api, { desk }: Service): void {
  api.get(
    '/books/:book/journal',
    {
      schema: {
        params: bookParams,
        querystring: page,
        response: { 200: z.object({ entries: z.array(entrySchema) }) },
      },
    },
    async ({ params, query }) => ({ entries: journalOf(desk, params.book, query.count, query.before) }),
  );

  api.post(
    '/books/:book/journal/:seq/undo',
    {
      schema: {
        params: bookParams.extend({ seq: z.coerce.number().int().positive() }),
        body: bySchema,
        response: { 200: entrySchema },
      },
    },
    async ({ params, body }) => takeBack(desk, params.book, params.seq, body),
  );

  api.get(
    '/books/:book/journal/verification',
    { config: COSTLY, schema: { params: bookParams, response: { 200: verification } } },
    async ({ params }) => verifyBook(desk, params.book),
  );
}
