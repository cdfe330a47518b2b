/** The books and their airplanes. */
import * as z from 'zod';
import { InputProblem } from '../../../analysis/remarks/index.ts';
import { createBook } from '../../actions/create-book.ts';
import { listBooks } from '../../actions/list-books.ts';
import { openBook } from '../../actions/open-book.ts';
import { revisionFile } from '../../actions/revision-file.ts';
import { saveAirplane } from '../../actions/save-airplane.ts';
import { bookStateSchema, bookSummarySchema } from '../../book/book-state.ts';
import { type Api, bookParams, bySchema, type Service } from './api.ts';

export function bookRoutes(api: Api, { desk }: Service): void {
  api.get('/books', { schema: { response: { 200: z.object({ books: z.array(bookSummarySchema) }) } } }, async () => ({
    books: listBooks(desk),
  }));

  api.post(
    '/books',
    { schema: { body: bySchema.extend({ airplane: z.unknown() }), response: { 201: z.object({ id: z.string() }) } } },
    async ({ body }, reply) => reply.code(201).send({ id: createBook(desk, { airplane: body.airplane }, body) }),
  );

  api.get('/books/:book', { schema: { params: bookParams, response: { 200: bookStateSchema } } }, async ({ params }) =>
    openBook(desk, params.book),
  );

  api.get(
    '/books/:book/airplane',
    {
      schema: {
        params: bookParams,
        querystring: z.object({ revision: z.coerce.number().int().positive().optional() }),
        response: { 200: z.unknown() },
      },
    },
    async ({ params, query }) => revisionFile(desk, params.book, query.revision),
  );

  api.put(
    '/books/:book/airplane',
    {
      schema: {
        params: bookParams,
        body: bySchema.extend({ airplane: z.unknown() }),
        response: { 200: z.object({ revision: z.int(), changed: z.boolean() }) },
      },
    },
    async ({ params, body }) => {
      const saved = saveAirplane(desk, params.book, body.airplane, body);
      if (!saved.saved) throw new InputProblem(saved.problems);
      return { revision: saved.revision, changed: saved.changed };
    },
  );
}
