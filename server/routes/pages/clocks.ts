/** The clocks of two logs beside each other: looked at, moved by hand, taken back. */
import * as z from 'zod';
import { clocksPage, clocksPath, clocksView } from '../../../templates/pages/clocks.view.ts';
import { typedNumber } from '../../../templates/words/typed-number.ts';
import { compareLogs, keepShift } from '../../actions/compare-logs.ts';
import { type Api, logParams, type Service } from '../api/api.ts';
import { doneQuery } from './home.ts';
import { bookFor, byOf, doneOf, fieldOf, formOf, sendPage } from './pages.ts';

const pairParams = logParams.extend({ other: z.string() });

export function clockRoutes(app: Api, { desk }: Service): void {
  app.get(
    '/books/:book/logs/:log/clock/:other',
    { schema: { hide: true, params: pairParams, querystring: doneQuery } },
    async ({ params, query }, reply) => {
      const { context } = await bookFor(desk, params.book);
      const compared = await compareLogs(desk, params.book, params.log, params.other);
      return sendPage(reply, 'clocks', clocksView, clocksPage(compared, { done: doneOf(query) }, context));
    },
  );

  app.post(
    '/books/:book/logs/:log/clock/:other',
    { schema: { hide: true, params: pairParams } },
    async (request, reply) => {
      const { book, log, other } = request.params;
      const form = formOf(request);
      const typed = fieldOf(form, 'shift');
      const seconds = typedNumber(typed);
      if (typed !== '' && seconds === null) {
        const { context } = await bookFor(desk, book);
        const compared = await compareLogs(desk, book, log, other);
        const view = clocksPage(
          compared,
          { typed, wrong: 'A number of seconds was wanted, such as 37.4 or -12.' },
          context,
        );
        return sendPage(reply.code(422), 'clocks', clocksView, view);
      }
      keepShift(desk, book, { first: log, other }, seconds, byOf(form));
      const done = seconds === null ? 'unshifted' : 'shifted';
      return reply.redirect(`${clocksPath(book, log, other)}?done=${done}`, 303);
    },
  );
}
