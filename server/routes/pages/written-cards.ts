/** Readings typed from a card in its own layout, without script too: saved, taken back, reduced. */
import * as z from 'zod';
import { entryFields } from '../../../analysis/cards/index.ts';
import { InputProblem } from '../../../analysis/remarks/index.ts';
import { readShaped } from '../../../templates/forms/airplane-reading.ts';
import { resultPath } from '../../../templates/pages/results.view.ts';
import {
  cardOptions,
  type TypedCard,
  writtenPage,
  writtenPath,
  writtenView,
} from '../../../templates/pages/written.view.ts';
import { boxName } from '../../../templates/pages/written-fields.ts';
import { bookPath } from '../../../templates/parts/frame.view.ts';
import { problemsInWords } from '../../../templates/parts/remarks.view.ts';
import { cardToWrite } from '../../actions/card-to-write.ts';
import { fileReturn } from '../../actions/file-return.ts';
import { knownReduction } from '../../actions/reduce-recording.ts';
import { reduceWritten } from '../../actions/reduce-written.ts';
import { undo } from '../../actions/undo.ts';
import { type Boxes, beginWriting, writeReadings } from '../../actions/write-readings.ts';
import { type WrittenCard, writtenCard } from '../../book/written-cards.ts';
import { COSTLY } from '../../plugins/rate-limit.ts';
import { type Api, bookParams, numberParams, type Service } from '../api/api.ts';
import { doneQuery } from './home.ts';
import { bookFor, byOf, doneOf, type Form, fieldOf, formOf, sendPage } from './pages.ts';
import { reducibleKinds } from './reducible-kinds.ts';

const newQuery = doneQuery.extend({ test: z.string(), card: z.string().optional() });

export function writtenCardRoutes(app: Api, { desk }: Service): void {
  const viewOf = async (
    book: string,
    hand: { test: string; document?: string | undefined; written?: WrittenCard },
    typed: TypedCard & { texts?: Boxes },
  ) => {
    const { state, context } = await bookFor(desk, book);
    const { written } = hand;
    const inHand = written
      ? { card: written.card, document: written.document, paper: written.paper, others: [] }
      : await cardToWrite(desk, book, hand);
    const kinds = reducibleKinds(inHand.card.id);
    const reductions = await Promise.all(kinds.map(knownReduction));
    const results = state.results.filter((one) => one.input.card?.number === written?.number && written !== undefined);
    return writtenPage(
      {
        ...inHand,
        number: written?.number ?? null,
        changedAt: written?.changedAt ?? null,
        texts: typed.texts ?? textsOf(written),
        results,
      },
      reductions,
      { today: desk.now().toISOString().slice(0, 10), ...typed },
      context,
    );
  };

  app.get(
    '/books/:book/written/new',
    { schema: { hide: true, params: bookParams, querystring: newQuery } },
    async ({ params, query }, reply) =>
      sendPage(
        reply,
        'written',
        writtenView,
        await viewOf(params.book, { test: query.test, document: query.card }, {}),
      ),
  );

  app.post(
    '/books/:book/written/new',
    { schema: { hide: true, params: bookParams, querystring: newQuery } },
    async (request, reply) => {
      const { book } = request.params;
      const { test, card: document } = request.query;
      const form = formOf(request);
      const { card } = await cardToWrite(desk, book, { test, document });
      const boxes = boxesIn(form, entryFields(card).order);
      const written = await beginWriting(desk, book, { test, document }, boxes, byOf(form));
      return goOn(book, written, form, reply);
    },
  );

  app.get(
    '/books/:book/written/:number',
    { schema: { hide: true, params: numberParams, querystring: doneQuery } },
    async ({ params, query }, reply) => {
      const written = writtenCard(desk.shelf.open(params.book), params.number);
      const typed = { done: doneOf(query) };
      return sendPage(
        reply,
        'written',
        writtenView,
        await viewOf(params.book, { test: written.card.id, written }, typed),
      );
    },
  );

  app.post(
    '/books/:book/written/:number',
    { config: COSTLY, schema: { hide: true, params: numberParams } },
    async (request, reply) => {
      const { book, number } = request.params;
      const form = formOf(request);
      const before = writtenCard(desk.shelf.open(book), number);
      if (fieldOf(form, 'deed') === 'undo') {
        undo(desk, book, before.lastEntry, byOf(form));
        return reply.redirect(`${writtenPath(book, number)}?done=undone`, 303);
      }
      const boxes = boxesIn(form, entryFields(before.card).order);
      return goOn(book, writeReadings(desk, book, number, boxes, byOf(form)), form, reply);
    },
  );

  /** A return sheet saved, and its hours and squawks written down. */
  async function fileIt(book: string, written: WrittenCard, form: Form, reply: Parameters<typeof sendPage>[0]) {
    try {
      fileReturn(desk, book, written.number, fieldOf(form, 'date'), byOf(form));
      return reply.redirect(bookPath(book, '/outings?done=hours#hours'), 303);
    } catch (error) {
      if (!(error instanceof InputProblem)) throw error;
      const problems = error.problems.map(({ message, where }) => ({ path: where.field ?? '', message }));
      const hand = { test: written.card.id, written };
      return sendPage(reply.code(422), 'written', writtenView, await viewOf(book, hand, { typed: form, problems }));
    }
  }

  /** Saved; and reduced, where that was asked. */
  async function goOn(book: string, written: WrittenCard, form: Form, reply: Parameters<typeof sendPage>[0]) {
    const [deed, kind] = fieldOf(form, 'deed').split(':');
    if (deed === 'file') return fileIt(book, written, form, reply);
    if (deed !== 'reduce' || kind === undefined) {
      return reply.redirect(`${writtenPath(book, written.number)}?done=written`, 303);
    }
    const hand = { test: written.card.id, written };
    const again = async (typed: TypedCard) =>
      sendPage(reply.code(422), 'written', writtenView, await viewOf(book, hand, { typed: form, ...typed }));
    const read = readShaped(cardOptions(await knownReduction(kind)), `options.${kind}`, form);
    if (read.problems.length > 0) return again({ problems: read.problems });
    try {
      const options = z.record(z.string(), z.unknown()).parse(read.json);
      const { stored } = await reduceWritten(desk, book, written.number, { kind, options }, byOf(form));
      const [only] = stored;
      if (stored.length === 1 && only) return reply.redirect(`${resultPath(book, only.number)}?done=reduced`, 303);
      return reply.redirect(`${writtenPath(book, written.number)}?done=reducedall`, 303);
    } catch (error) {
      if (!(error instanceof InputProblem)) throw error;
      const keys = new Set(entryFields(written.card).order);
      const placed = error.problems.filter((one) => keys.has(one.where.field ?? ''));
      return again({
        problems: placed.map(({ message, where }) => ({ path: where.field ?? '', message })),
        others: problemsInWords(error.problems.filter((one) => !placed.includes(one))),
      });
    }
  }
}

function boxesIn(form: Form, keys: readonly string[]): Boxes {
  return Object.fromEntries(
    keys.flatMap((key) => (form.has(boxName(key)) ? [[key, fieldOf(form, boxName(key)).slice(0, 2000)] as const] : [])),
  );
}

function textsOf(written: WrittenCard | undefined): Boxes {
  return Object.fromEntries(Object.entries(written?.boxes ?? {}).map(([key, { text }]) => [key, text]));
}
