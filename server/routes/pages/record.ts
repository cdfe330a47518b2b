/** The record of a book, and undoing. */
import * as z from 'zod';
import { RECORD_PAGE, recordPage, recordView } from '../../../templates/pages/record.view.ts';
import { bookPath } from '../../../templates/parts/frame.view.ts';
import { journalOf } from '../../actions/journal-of.ts';
import { takeBack } from '../../actions/take-back.ts';
import { type Api, bookParams, type Service } from '../api/api.ts';
import { doneQuery } from './home.ts';
import { bookFor, byOf, doneOf, formOf, sendPage } from './pages.ts';

const recordQuery = doneQuery.extend({ before: z.coerce.number().int().positive().optional() });
const entryParams = bookParams.extend({ seq: z.coerce.number().int().positive() });

export function recordRoutes(app: Api, { desk }: Service): void {
  app.get(
    '/books/:book/record',
    { schema: { hide: true, params: bookParams, querystring: recordQuery } },
    async ({ params, query }, reply) => {
      const { state, context } = await bookFor(desk, params.book);
      const entries = journalOf(desk, params.book, RECORD_PAGE, query.before);
      const names = new Map([
        ...state.logs.map((log): [string, string] => [log.id, log.name]),
        ...state.testStatus.map((one): [string, string] => [one.test, one.title]),
      ]);
      return sendPage(reply, 'record', recordView, recordPage(entries, names, context, doneOf(query)));
    },
  );

  app.post('/books/:book/record/:seq/undo', { schema: { hide: true, params: entryParams } }, async (request, reply) => {
    const { book, seq } = request.params;
    await takeBack(desk, book, seq, byOf(formOf(request)));
    return reply.redirect(bookPath(book, '/record?done=undone'), 303);
  });
}
