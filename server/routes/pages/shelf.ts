/** The shelf of books: opened, started, brought in. */
import { rm } from 'node:fs/promises';
import { InputProblem, problem } from '../../../analysis/remarks/index.ts';
import { fieldProblems } from '../../../templates/forms/field-problems.ts';
import { bookNewPage, bookNewView, newAirplane } from '../../../templates/pages/book-new.view.ts';
import { shelfPage, shelfView } from '../../../templates/pages/shelf.view.ts';
import { bookPath } from '../../../templates/parts/frame.view.ts';
import { createBook } from '../../actions/create-book.ts';
import { importBook } from '../../actions/import-book.ts';
import { listBooks } from '../../actions/list-books.ts';
import { receiveArchive } from '../../actions/receive-archive.ts';
import { COSTLY } from '../../plugins/rate-limit.ts';
import type { Api, Service } from '../api/api.ts';
import { doneQuery } from './home.ts';
import { doneOf, fieldOf, formOf, sendPage } from './pages.ts';

export function shelfRoutes(app: Api, { desk }: Service): void {
  app.get('/', { schema: { hide: true, querystring: doneQuery } }, async ({ query }, reply) =>
    sendPage(reply, 'shelf', shelfView, shelfPage(listBooks(desk), doneOf(query))),
  );

  app.get('/books/new', { schema: { hide: true } }, async (_, reply) =>
    sendPage(reply, 'book-new', bookNewView, bookNewPage()),
  );

  app.post('/books/new', { schema: { hide: true } }, async (request, reply) => {
    const form = formOf(request);
    const read = newAirplane(form);
    const again = (problems = read.problems) =>
      sendPage(reply.code(422), 'book-new', bookNewView, bookNewPage(read.json, form, problems));
    if (read.problems.length > 0) return again();
    try {
      const who = fieldOf(form, 'builder');
      const id = createBook(
        desk,
        { airplane: read.json },
        { why: 'First description', ...(who === '' ? {} : { who }) },
      );
      return reply.redirect(bookPath(id, '/airplane?done=started'), 303);
    } catch (error) {
      if (!(error instanceof InputProblem)) throw error;
      return again(fieldProblems(error.problems).problems);
    }
  });

  app.post('/books/import', { config: COSTLY, schema: { hide: true } }, async (request, reply) => {
    const part = request.isMultipart() ? await request.file() : undefined;
    if (!part) throw new InputProblem([problem('bad-request', 'The request holds no file.')]);
    const path = await receiveArchive(desk, part.file);
    try {
      const { id } = await importBook(desk, path);
      return reply.redirect(bookPath(id, '?done=imported'), 303);
    } finally {
      await rm(path, { force: true });
    }
  });
}
