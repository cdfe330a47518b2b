/** The program drawn. */
import * as z from 'zod';
import { programGraphPage, programGraphView } from '../../../templates/pages/program-graph.view.ts';
import { type Api, bookParams, type Service } from '../api/api.ts';
import { bookFor, planIn, sendPage } from './pages.ts';

const graphQuery = z.object({
  stage: z.string().optional(),
  system: z.string().optional(),
  status: z.string().optional(),
  test: z.string().optional(),
  titles: z.string().optional(),
});

export function programGraphRoutes(app: Api, { desk }: Service): void {
  app.get(
    '/books/:book/program/graph',
    { schema: { hide: true, params: bookParams, querystring: graphQuery } },
    async ({ params, query }, reply) => {
      const opened = await bookFor(desk, params.book);
      const { program } = planIn(opened);
      const view = programGraphPage(program, opened.state.testStatus, query, opened.context);
      return sendPage(reply, 'program-graph', programGraphView, view);
    },
  );
}
