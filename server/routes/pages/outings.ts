/** Outings, and the hours flown. */
import { movesIn } from '../../../analysis/program/index.ts';
import { InputProblem, problem } from '../../../analysis/remarks/index.ts';
import { outingPage, outingView } from '../../../templates/pages/outing.view.ts';
import { outingsPage, outingsView, readHours } from '../../../templates/pages/outings.view.ts';
import { changePath } from '../../../templates/pages/plan-change.ts';
import { bookPath } from '../../../templates/parts/frame.view.ts';
import { cardsOfOuting } from '../../actions/cards-of-outing.ts';
import { logHours } from '../../actions/log-hours.ts';
import { noteOuting } from '../../actions/note-outing.ts';
import { standingOf } from '../../actions/plan-standing.ts';
import { outingNoteSchema } from '../../book/plan-entries.ts';
import { type Api, bookParams, numberParams, type Service } from '../api/api.ts';
import { doneQuery } from './home.ts';
import { airplaneIn, bookFor, byOf, doneOf, type Form, fieldOf, formOf, planIn, sendPage } from './pages.ts';

export function outingRoutes(app: Api, { desk }: Service): void {
  const outings = async (book: string, form: Form, done: string) => {
    const opened = await bookFor(desk, book);
    const program = planIn(opened).program;
    const { testStatus: status, hours } = opened.state;
    const read = readHours((name) => fieldOf(form, name));
    const today = desk.now().toISOString().slice(0, 10);
    const typed = form.size === 0 ? { today } : { today, typed: read.typed, problems: read.problems };
    return { view: outingsPage(program, { status, hours }, opened.context, typed, done), read };
  };

  app.get(
    '/books/:book/outings',
    { schema: { hide: true, params: bookParams, querystring: doneQuery } },
    async ({ params, query }, reply) =>
      sendPage(reply, 'outings', outingsView, (await outings(params.book, new Map(), doneOf(query))).view),
  );

  app.post('/books/:book/hours', { schema: { hide: true, params: bookParams } }, async (request, reply) => {
    const { book } = request.params;
    const form = formOf(request);
    const { view, read } = await outings(book, form, '');
    if (!read.hours) return sendPage(reply.code(422), 'outings', outingsView, view);
    logHours(desk, book, read.hours, byOf(form));
    return reply.redirect(bookPath(book, '/outings?done=hours#hours'), 303);
  });

  app.get(
    '/books/:book/outings/:number',
    { schema: { hide: true, params: numberParams, querystring: doneQuery } },
    async ({ params, query }, reply) => {
      const opened = await bookFor(desk, params.book);
      const airplane = airplaneIn(opened);
      const plan = planIn(opened);
      const { testStatus: status, outingNotes: notes } = opened.state;
      const { done } = await standingOf(plan, status);
      const turns = movesIn(airplane, plan.program, plan.options, done).turnsOf(params.number);
      const paper = await cardsOfOuting(desk, params.book, params.number);
      const facts = { status, notes, turns, paper };
      const view = outingPage(params.number, plan.program, airplane, facts, opened.context, doneOf(query));
      if (!view) throw new InputProblem([problem('not-found', `The program has no outing ${params.number}.`)]);
      return sendPage(reply, 'outing', outingView, view);
    },
  );

  app.post(
    '/books/:book/outings/:number/notes',
    { schema: { hide: true, params: numberParams } },
    async (request, reply) => {
      const { book, number } = request.params;
      const form = formOf(request);
      const what = outingNoteSchema.safeParse(fieldOf(form, 'what'));
      if (!what.success) throw new InputProblem([problem('bad-request', 'Say what came of it.', { field: 'what' })]);
      await noteOuting(desk, book, number, { what: what.data, note: fieldOf(form, 'note').slice(0, 4000) }, byOf(form));
      // after a no-go the next question is what could go instead
      if (what.data === 'no-go')
        return reply.redirect(changePath(book, { happened: [{ kind: 'no-go', outing: number }] }), 303);
      return reply.redirect(bookPath(book, `/outings/${number}?done=noted`), 303);
    },
  );
}
