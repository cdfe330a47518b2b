/** The shelf of books: opened, started, brought in. */
import { rm } from 'node:fs/promises';
import * as z from 'zod';
import { InputProblem, problem } from '../../../analysis/remarks/index.ts';
import { fieldProblems } from '../../../templates/forms/field-problems.ts';
import { answeredAirplane, answeredCopy } from '../../../templates/forms/ten-questions.ts';
import { bookNewPage, bookNewView } from '../../../templates/pages/book-new.view.ts';
import { shelfPage, shelfView } from '../../../templates/pages/shelf.view.ts';
import { bookPath } from '../../../templates/parts/frame.view.ts';
import { createBook } from '../../actions/create-book.ts';
import { demoDescriptions } from '../../actions/demo-descriptions.ts';
import { importBook } from '../../actions/import-book.ts';
import { listBooks } from '../../actions/list-books.ts';
import { receiveArchive } from '../../actions/receive-archive.ts';
import { COSTLY } from '../../plugins/rate-limit.ts';
import type { Api, Service } from '../api/api.ts';
import { doneQuery } from './home.ts';
import { doneOf, fieldOf, formOf, sendPage } from './pages.ts';

const fromQuery = z.object({ from: z.string().optional() });

export function shelfRoutes(app: Api, { desk }: Service): void {
  app.get('/', { schema: { hide: true, querystring: doneQuery } }, async ({ query }, reply) =>
    sendPage(reply, 'shelf', shelfView, shelfPage(listBooks(desk), doneOf(query))),
  );

  app.get('/books/new', { schema: { hide: true, querystring: fromQuery } }, async ({ query: { from } }, reply) =>
    sendPage(reply, 'book-new', bookNewView, bookNewPage(demoDescriptions(desk), from ? { from } : {})),
  );

  app.post('/books/new', { schema: { hide: true } }, async (request, reply) => {
    const form = formOf(request);
    const demos = demoDescriptions(desk);
    const copied = demos.find((one) => one.id === fieldOf(form, 'from'));
    const read = copied ? answeredCopy(copied.json, form) : answeredAirplane(form);
    const again = (problems = read.problems) => {
      const answers = { json: read.json, typed: form, problems, ...(copied ? { from: copied.id } : {}) };
      return sendPage(reply.code(422), 'book-new', bookNewView, bookNewPage(demos, answers));
    };
    if (read.problems.length > 0) return again();
    try {
      const who = fieldOf(form, 'builder');
      const why = copied
        ? `First description, copied from the invented ${copied.name}; all of it to be confirmed`
        : 'First description, from ten questions; usual values to be confirmed';
      const id = createBook(desk, { airplane: read.json }, { why, ...(who === '' ? {} : { who }) });
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
