/** Home of a book, its squawks. */
import * as z from 'zod';
import { InputProblem, problem } from '../../../analysis/remarks/index.ts';
import { homePage, homeView } from '../../../templates/pages/home.view.ts';
import { bookPath } from '../../../templates/parts/frame.view.ts';
import { openSquawk } from '../../actions/open-squawk.ts';
import { standingOf } from '../../actions/plan-standing.ts';
import { settleSquawk } from '../../actions/settle-squawk.ts';
import { type Api, bookParams, numberParams, type Service } from '../api/api.ts';
import { bookFor, byOf, doneOf, fieldOf, formOf, planIn, sendPage } from './pages.ts';

export const doneQuery = z.object({ done: z.string().optional() });

export function homeRoutes(app: Api, { desk }: Service): void {
  app.get(
    '/books/:book',
    { schema: { hide: true, params: bookParams, querystring: doneQuery } },
    async ({ params, query }, reply) => {
      const opened = await bookFor(desk, params.book);
      // a description that no longer fits leaves nothing to plan: its own page mends it
      if (!opened.state.airplane.parsed) return reply.redirect(bookPath(params.book, '/airplane'), 303);
      const plan = planIn(opened);
      const { program, partsDone } = plan;
      const { testStatus: status, results, squawks, hours } = opened.state;
      const { putBack, stale } = await standingOf(plan, status);
      const stalePaper = stale.map((paper) => paper.title);
      const facts = { program, status, results, squawks, hours, partsDone, putBack, stalePaper };
      const view = homePage(facts, opened.context, doneOf(query));
      return sendPage(reply, 'home', homeView, view);
    },
  );

  app.post('/books/:book/squawks', { schema: { hide: true, params: bookParams } }, async (request, reply) => {
    const form = formOf(request);
    const text = fieldOf(form, 'text').slice(0, 4000);
    if (text === '')
      throw new InputProblem([problem('bad-request', 'The squawk says nothing yet.', { field: 'text' })]);
    openSquawk(desk, request.params.book, text, byOf(form));
    return reply.redirect(bookPath(request.params.book, '?done=squawk'), 303);
  });

  app.post(
    '/books/:book/squawks/:number/settle',
    { schema: { hide: true, params: numberParams } },
    async (request, reply) => {
      const { book, number } = request.params;
      const form = formOf(request);
      settleSquawk(desk, book, number, { open: false, how: fieldOf(form, 'how').slice(0, 4000) }, byOf(form));
      return reply.redirect(bookPath(book, '?done=settled'), 303);
    },
  );
}
