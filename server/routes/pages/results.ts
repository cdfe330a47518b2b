/** Results. */
import { resultsPage, resultsView } from '../../../templates/pages/results.view.ts';
import { type Api, bookParams, type Service } from '../api/api.ts';
import { doneQuery } from './home.ts';
import { bookFor, doneOf, sendPage } from './pages.ts';

export function resultRoutes(app: Api, { desk }: Service): void {
  app.get(
    '/books/:book/results',
    { schema: { hide: true, params: bookParams, querystring: doneQuery } },
    async ({ params, query }, reply) => {
      const { state, context } = await bookFor(desk, params.book);
      return sendPage(reply, 'results', resultsView, resultsPage(state.results, context, doneOf(query)));
    },
  );
}
