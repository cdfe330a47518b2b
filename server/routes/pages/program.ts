/** The program, and one test of it. */
import * as z from 'zod';
import { InputProblem, problem } from '../../../analysis/remarks/index.ts';
import { programPage, programView } from '../../../templates/pages/program.view.ts';
import { testPage, testPath, testView } from '../../../templates/pages/test.view.ts';
import { markTest } from '../../actions/mark-test.ts';
import { markSchema } from '../../book/entry.ts';
import { type Api, bookParams, type Service } from '../api/api.ts';
import { doneQuery } from './home.ts';
import { bookFor, byOf, doneOf, fieldOf, formOf, planIn, sendPage } from './pages.ts';

const filterQuery = z.object({
  stage: z.string().optional(),
  system: z.string().optional(),
  status: z.string().optional(),
});
const testParams = bookParams.extend({ test: z.string() });

export function programRoutes(app: Api, { desk }: Service): void {
  app.get(
    '/books/:book/program',
    { schema: { hide: true, params: bookParams, querystring: filterQuery } },
    async ({ params, query }, reply) => {
      const opened = await bookFor(desk, params.book);
      const program = planIn(opened).program;
      const view = programPage(program, opened.state.testStatus, query, opened.context);
      return sendPage(reply, 'program', programView, view);
    },
  );

  app.get(
    '/books/:book/program/:test',
    { schema: { hide: true, params: testParams, querystring: doneQuery } },
    async ({ params, query }, reply) => {
      const opened = await bookFor(desk, params.book);
      const program = planIn(opened).program;
      const { testStatus: status, results } = opened.state;
      const view = testPage(params.test, program, { status, results }, opened.context, doneOf(query));
      if (!view) throw new InputProblem([problem('not-found', 'The program of this airplane has no such test.')]);
      return sendPage(reply, 'test', testView, view);
    },
  );

  app.post(
    '/books/:book/program/:test/mark',
    { schema: { hide: true, params: testParams } },
    async (request, reply) => {
      const { book, test } = request.params;
      const form = formOf(request);
      const mark = markSchema.safeParse(fieldOf(form, 'mark'));
      if (!mark.success)
        throw new InputProblem([problem('bad-request', 'Say where the test stands.', { field: 'mark' })]);
      await markTest(desk, book, test, mark.data, fieldOf(form, 'note').slice(0, 4000), byOf(form));
      return reply.redirect(`${testPath(book, test)}?done=marked`, 303);
    },
  );
}
