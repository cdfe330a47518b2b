/** Results from figures written on a card. */
import * as z from 'zod';
import { InputProblem } from '../../../analysis/remarks/index.ts';
import { cellOf } from '../../../templates/forms/points-table.ts';
import { readEntry, resultNewPage, resultNewView, type TypedPoints } from '../../../templates/pages/result-new.view.ts';
import { problemsInWords } from '../../../templates/parts/remarks.view.ts';
import { reduce } from '../../actions/reduce.ts';
import { knownReduction } from '../../actions/reduce-recording.ts';
import { COSTLY } from '../../plugins/rate-limit.ts';
import { type Api, bookParams, type Service } from '../api/api.ts';
import { bookFor, byOf, fieldOf, formOf, sendPage } from './pages.ts';
import { placeOf } from './results.ts';

const kindParams = bookParams.extend({ kind: z.string() });

export function writtenRoutes(app: Api, { desk }: Service): void {
  const viewOf = async (book: string, kind: string, typed: TypedPoints) => {
    const { state, context } = await bookFor(desk, book);
    const titles = new Map(state.testStatus.map((one) => [one.test, one.title]));
    return resultNewPage(await knownReduction(kind), titles, typed, context);
  };

  app.get(
    '/books/:book/results/new/:kind',
    { schema: { hide: true, params: kindParams, querystring: z.object({ test: z.string().optional() }) } },
    async ({ params, query }, reply) => {
      const typed = new Map(query.test === undefined ? [] : [['test', [query.test]] as const]);
      return sendPage(reply, 'result-new', resultNewView, await viewOf(params.book, params.kind, { typed }));
    },
  );

  app.post(
    '/books/:book/results/new/:kind',
    { config: COSTLY, schema: { hide: true, params: kindParams } },
    async (request, reply) => {
      const { book, kind } = request.params;
      const typed = formOf(request);
      const { context } = await bookFor(desk, book);
      const { points, options, tests, problems, read } = readEntry(await knownReduction(kind), typed, context);
      const again = async (more: Omit<TypedPoints, 'typed'>, status: number) =>
        sendPage(reply.code(status), 'result-new', resultNewView, await viewOf(book, kind, { typed, ...more }));
      const more = fieldOf(typed, 'more');
      if (more !== '') return again({ more }, 200);
      if (problems.length > 0) return again({ problems }, 422);
      try {
        const wanted = { kind, logs: [], points, options: z.record(z.string(), z.unknown()).parse(options), tests };
        return reply.redirect(placeOf(book, [], await reduce(desk, book, wanted, byOf(typed))), 303);
      } catch (error) {
        if (!(error instanceof InputProblem)) throw error;
        const placed = error.problems.filter((one) => one.where.field !== undefined);
        return again(
          {
            problems: placed.map(({ message, where }) => ({ path: cellOf(where.field ?? '', read), message })),
            others: problemsInWords(error.problems.filter((one) => !placed.includes(one))),
          },
          422,
        );
      }
    },
  );
}
