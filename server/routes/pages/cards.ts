/** Cards shown as they will be printed, and printed. */
import * as z from 'zod';
import { InputProblem, problem } from '../../../analysis/remarks/index.ts';
import { type CardsChoice, cardsChoice, cardsPage, cardsView } from '../../../templates/pages/cards.view.ts';
import { previewBookCards, printBookCards } from '../../actions/print-book-cards.ts';
import { COSTLY } from '../../plugins/rate-limit.ts';
import { SHEET_POLICY } from '../../plugins/security-headers.ts';
import { type Api, bookParams, type Service } from '../api/api.ts';
import { cardsBody } from '../api/cards.ts';
import { bookFor, byOf, fieldOf, formOf, planIn, sendPage } from './pages.ts';

const anyQuery = z.record(z.string(), z.union([z.string(), z.array(z.string())]));
type Query = z.output<typeof anyQuery>;

export function cardRoutes(app: Api, { desk }: Service): void {
  const choose = async (book: string, query: Query) => {
    const opened = await bookFor(desk, book);
    const program = planIn(opened).program;
    const choice: CardsChoice = cardsChoice((name) => [query[name] ?? []].flat().at(-1), program);
    return { opened, program, choice };
  };

  app.get(
    '/books/:book/cards',
    { schema: { hide: true, params: bookParams, querystring: anyQuery } },
    async ({ params, query }, reply) => {
      const { opened, program, choice } = await choose(params.book, query);
      const { cards, sheets, pages } = await previewBookCards(desk, params.book, choice);
      const counts = { cards: cards.length, sheets, pages };
      return sendPage(reply, 'cards', cardsView, cardsPage(choice, program, counts, opened.context));
    },
  );

  app.get(
    '/books/:book/cards/preview',
    {
      helmet: { contentSecurityPolicy: { useDefaults: false, directives: SHEET_POLICY } },
      schema: { hide: true, params: bookParams, querystring: anyQuery },
    },
    async ({ params, query }, reply) => {
      const { choice } = await choose(params.book, query);
      const { html } = await previewBookCards(desk, params.book, choice);
      return reply.type('text/html; charset=utf-8').header('cache-control', 'no-store').send(html);
    },
  );

  app.post(
    '/books/:book/cards/print',
    { config: COSTLY, schema: { hide: true, params: bookParams } },
    async (request, reply) => {
      const form = formOf(request);
      const { pdf } = await printBookCards(desk, request.params.book, wantedOf(fieldOf(form, 'job')), byOf(form));
      return reply
        .type('application/pdf')
        .header('content-disposition', 'inline; filename="cards.pdf"')
        .send(Buffer.from(pdf));
    },
  );
}

/** What the page itself wrote into its form. */
function wantedOf(text: string): z.output<typeof cardsBody> {
  try {
    return cardsBody.parse(JSON.parse(text));
  } catch {
    throw new InputProblem([problem('bad-request', 'The choice of cards cannot be read.', { field: 'job' })]);
  }
}
