/** Arranging the program: moves by hand, and a new plan seen before it is put in force. */
import * as z from 'zod';
import { movesIn } from '../../../analysis/program/index.ts';
import { InputProblem, problem } from '../../../analysis/remarks/index.ts';
import { changePath, type PlanChange, readChange } from '../../../templates/pages/plan-change.ts';
import { programArrangePage, programArrangeView } from '../../../templates/pages/program-arrange.view.ts';
import { programReplanPage, programReplanView } from '../../../templates/pages/program-replan.view.ts';
import { bookPath } from '../../../templates/parts/frame.view.ts';
import { arrangeProgram, proposeChange } from '../../actions/arrange-program.ts';
import { standingOf } from '../../actions/plan-standing.ts';
import { arrangements } from '../../book/plan-state.ts';
import type { Desk } from '../../desk.ts';
import { type Api, bookParams, type Service } from '../api/api.ts';
import { doneQuery } from './home.ts';
import { bookFor, byOf, doneOf, type Form, formOf, planIn, sendPage } from './pages.ts';

const arrangeQuery = doneQuery.extend({ stage: z.string().optional() });
const anyQuery = z.record(z.string(), z.union([z.string(), z.array(z.string())]));

export function arrangingRoutes(app: Api, { desk }: Service): void {
  app.get(
    '/books/:book/program/arrange',
    { schema: { hide: true, params: bookParams, querystring: arrangeQuery } },
    async ({ params, query }, reply) => {
      const opened = await bookFor(desk, params.book);
      const plan = planIn(opened);
      const { done, printed } = await standingOf(plan, opened.state.testStatus);
      const moves = movesIn(plan.airplane, plan.program, plan.options, done);
      const facts = { program: plan.program, moves, done, printed, arranged: arrangedWords(desk, params.book) };
      const view = programArrangePage(facts, query.stage ?? '', opened.context, doneOf(query));
      return sendPage(reply, 'program-arrange', programArrangeView, view);
    },
  );

  // a move that leaves every printed sheet as it is goes through at once; one that does not is shown first
  app.post('/books/:book/program/arrange', { schema: { hide: true, params: bookParams } }, async (request, reply) => {
    const { book } = request.params;
    const form = formOf(request);
    const change = changeIn(form);
    const proposed = await proposeChange(desk, book, change);
    if (proposed.printAgain.length + proposed.renumbered.length > 0)
      return reply.redirect(changePath(book, change), 303);
    const made = await arrangeProgram(desk, book, change, byOf(form));
    return reply.redirect(placeOf(book, change, made.program), 303);
  });

  app.get(
    '/books/:book/program/replan',
    { schema: { hide: true, params: bookParams, querystring: anyQuery } },
    async ({ params, query }, reply) => {
      const opened = await bookFor(desk, params.book);
      const { program } = planIn(opened);
      const change = changeIn(new Map(Object.entries(query).map(([name, value]) => [name, [value].flat()])));
      const made = await proposeChange(desk, params.book, change);
      const view = programReplanPage(change, made, program.hours, opened.context);
      return sendPage(reply, 'program-replan', programReplanView, view);
    },
  );

  app.post('/books/:book/program/replan', { schema: { hide: true, params: bookParams } }, async (request, reply) => {
    const { book } = request.params;
    const form = formOf(request);
    await arrangeProgram(desk, book, changeIn(form), byOf(form));
    return reply.redirect(bookPath(book, '/program?done=arranged'), 303);
  });
}

function changeIn(form: Form): PlanChange {
  const change = readChange((name) => form.get(name) ?? []);
  if (!change)
    throw new InputProblem([problem('bad-request', 'It does not say what is to change.', { field: 'what' })]);
  return change;
}

/** Back to where the moved thing now stands. */
function placeOf(
  book: string,
  change: PlanChange,
  program: Awaited<ReturnType<typeof proposeChange>>['program'],
): string {
  const outing =
    'test' in change
      ? program.outings.find(({ parts }) => parts.some((one) => one.test === change.test && one.part === change.part))
      : 'outing' in change
        ? program.outings[change.to - 1]
        : undefined;
  const stage = outing ? `&stage=${outing.stage}#outing-${outing.number}` : '';
  return bookPath(book, `/program/arrange?done=moved${stage}`);
}

/** What the arrangement in force was made for; empty where the program is as worked out. */
export function arrangedWords(desk: Desk, book: string): string {
  const last = arrangements(desk.shelf.open(book).database).at(-1);
  if (last?.document == null) return '';
  return `Arranged by hand on ${last.at.slice(0, 10)}${last.who === '' ? '' : ` by ${last.who}`}: ${last.words}`;
}
