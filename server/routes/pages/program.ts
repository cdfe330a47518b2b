/** The program, and one test of it. */
import * as z from 'zod';
import { movesIn } from '../../../analysis/program/index.ts';
import { InputProblem, problem } from '../../../analysis/remarks/index.ts';
import { movePartOf } from '../../../templates/pages/move-choices.ts';
import { programPage, programView } from '../../../templates/pages/program.view.ts';
import { testPage, testPath, testView } from '../../../templates/pages/test.view.ts';
import { markTest } from '../../actions/mark-test.ts';
import { standingOf } from '../../actions/plan-standing.ts';
import { markSchema } from '../../book/entry.ts';
import { type Api, bookParams, type Service } from '../api/api.ts';
import { arrangedWords } from './arranging.ts';
import { doneQuery } from './home.ts';
import { bookFor, byOf, doneOf, fieldOf, formOf, planIn, sendPage } from './pages.ts';

const filterQuery = doneQuery.extend({
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
      const plan = planIn(opened);
      const { program, ownProblems } = plan;
      const { testStatus: status, hours, leftOut } = opened.state;
      const { putBack, stale } = await standingOf(plan, status);
      const stalePaper = stale.map((paper) => paper.title);
      const arranged = arrangedWords(desk, params.book);
      const facts = { program, status, hours, ownProblems, leftOut, putBack, stalePaper, arranged };
      const view = programPage(facts, query, opened.context, doneOf(query));
      return sendPage(reply, 'program', programView, view);
    },
  );

  app.get(
    '/books/:book/program/:test',
    { schema: { hide: true, params: testParams, querystring: doneQuery } },
    async ({ params, query }, reply) => {
      const opened = await bookFor(desk, params.book);
      const plan = planIn(opened);
      const { program } = plan;
      const { testStatus: status, results } = opened.state;
      const { done } = await standingOf(plan, status);
      const book = movesIn(plan.airplane, program, plan.options, done);
      const outings = program.outings.filter((one) => one.tests.includes(params.test) && !done.includes(one.number));
      const moves = outings.flatMap(({ parts }) =>
        parts.flatMap(({ test, part }) => {
          const found = test === params.test ? book.movesOf(test, part) : null;
          return found ? [movePartOf(found, program, params.book)] : [];
        }),
      );
      const view = testPage(params.test, program, { status, results, moves }, opened.context, doneOf(query));
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
