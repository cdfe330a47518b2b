/** Outings, and the hours flown. */
import { InputProblem, problem } from '../../../analysis/remarks/index.ts';
import { outingPage, outingView } from '../../../templates/pages/outing.view.ts';
import { outingsPage, outingsView, readHours } from '../../../templates/pages/outings.view.ts';
import { bookPath } from '../../../templates/parts/frame.view.ts';
import { logHours } from '../../actions/log-hours.ts';
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
    { schema: { hide: true, params: numberParams } },
    async ({ params }, reply) => {
      const opened = await bookFor(desk, params.book);
      const airplane = airplaneIn(opened);
      const program = planIn(opened).program;
      const view = outingPage(params.number, program, airplane, opened.state.testStatus, opened.context);
      if (!view) throw new InputProblem([problem('not-found', `The program has no outing ${params.number}.`)]);
      return sendPage(reply, 'outing', outingView, view);
    },
  );
}
