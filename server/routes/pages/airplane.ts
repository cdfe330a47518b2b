/** The airplane: shown, edited by sections, compared, brought in and out. */
import * as z from 'zod';
import { crossCheck, readAirplane } from '../../../analysis/airplane/index.ts';
import { InputProblem, problem } from '../../../analysis/remarks/index.ts';
import type { FieldProblem } from '../../../templates/forms/airplane-form.ts';
import { addEntry, readSection, removeEntry } from '../../../templates/forms/airplane-reading.ts';
import { fieldProblems } from '../../../templates/forms/field-problems.ts';
import { toConfirm, withConfirmed } from '../../../templates/forms/to-confirm.ts';
import { airplanePage, airplaneView } from '../../../templates/pages/airplane.view.ts';
import { airplaneEditPage, airplaneEditView, type EditedSection } from '../../../templates/pages/airplane-edit.view.ts';
import { airplaneImportPage, airplaneImportView } from '../../../templates/pages/airplane-import.view.ts';
import { airplaneRevisionPage, airplaneRevisionView } from '../../../templates/pages/airplane-revision.view.ts';
import { bookPath } from '../../../templates/parts/frame.view.ts';
import { problemsInWords } from '../../../templates/parts/remarks.view.ts';
import { revisionFile } from '../../actions/revision-file.ts';
import { saveAirplane } from '../../actions/save-airplane.ts';
import { touchedByRevision } from '../../actions/touched-by-revision.ts';
import { type Api, bookParams, numberParams, type Service } from '../api/api.ts';
import { doneQuery } from './home.ts';
import { bookFor, byOf, doneOf, fieldOf, formOf, sendPage } from './pages.ts';

const sectionParams = bookParams.extend({ section: z.string() });
const revisionQuery = z.object({ revision: z.coerce.number().int().positive().optional() });

export function airplaneRoutes(app: Api, { desk }: Service): void {
  app.get(
    '/books/:book/airplane',
    { schema: { hide: true, params: bookParams, querystring: doneQuery } },
    async ({ params, query }, reply) => {
      const { state, context, plan } = await bookFor(desk, params.book);
      const program = plan?.program ?? null;
      return sendPage(reply, 'airplane', airplaneView, airplanePage(state.airplane, program, context, doneOf(query)));
    },
  );

  const section = async (book: string, id: string, edited?: EditedSection) => {
    const { state, context } = await bookFor(desk, book);
    const shown = edited ?? { json: state.airplane.file };
    const view = airplaneEditPage(id, { doubts: doubtsIn(shown.json), ...shown }, context);
    if (!view) throw new InputProblem([problem('not-found', 'The description has no such section.')]);
    return view;
  };

  app.get(
    '/books/:book/airplane/edit/:section',
    { schema: { hide: true, params: sectionParams } },
    async ({ params }, reply) =>
      sendPage(reply, 'airplane-edit', airplaneEditView, await section(params.book, params.section)),
  );

  app.post(
    '/books/:book/airplane/edit/:section',
    { schema: { hide: true, params: sectionParams } },
    async (request, reply) => {
      const { book, section: id } = request.params;
      const form = formOf(request);
      const read = readSection(id, revisionFile(desk, book), form, fieldOf(form, 'who'));
      const again = async (edited: EditedSection, status = 200) =>
        sendPage(reply.code(status), 'airplane-edit', airplaneEditView, await section(book, id, edited));
      const [add, remove] = [fieldOf(form, 'add'), fieldOf(form, 'remove')];
      if (add !== '') return again({ json: addEntry(read.json, add, fieldOf(form, `name:${add}`)), typed: form });
      // places move up when one is taken out: what was typed is in the description by now
      if (remove !== '') return again({ json: removeEntry(read.json, remove) });
      if (fieldOf(form, 'act') === 'show') return again({ json: read.json, typed: form, problems: read.problems });
      if (read.problems.length > 0) return again({ json: read.json, typed: form, problems: read.problems }, 422);
      const confirmed = withConfirmed(read.json, id);
      const saved = saveAirplane(desk, book, confirmed, byOf(form));
      if (!saved.saved) {
        const { problems, others } = fieldProblems(saved.problems);
        return again({ json: read.json, typed: form, problems, others }, 422);
      }
      const done = !saved.changed ? 'unchanged' : doubtsIn(confirmed).length > 0 ? 'doubted' : 'saved';
      return reply.redirect(bookPath(book, `/airplane?done=${done}#${id}`), 303);
    },
  );

  app.get(
    '/books/:book/airplane/revisions/:number',
    { schema: { hide: true, params: numberParams } },
    async ({ params }, reply) => {
      const { state, context, plan } = await bookFor(desk, params.book);
      const revision = state.airplane.revisions.find((one) => one.number === params.number);
      if (!revision) throw new InputProblem([problem('not-found', `There is no revision ${params.number}.`)]);
      const touched = touchedByRevision(desk, params.book, params.number, state.results, plan?.ownTests);
      return sendPage(
        reply,
        'airplane-revision',
        airplaneRevisionView,
        airplaneRevisionPage(revision, touched, context),
      );
    },
  );

  app.get(
    '/books/:book/airplane/airplane.json',
    { schema: { hide: true, params: bookParams, querystring: revisionQuery } },
    async ({ params, query }, reply) =>
      reply
        .type('application/json; charset=utf-8')
        .header('content-disposition', 'attachment; filename="airplane.json"')
        .send(`${JSON.stringify(revisionFile(desk, params.book, query.revision), null, 2)}\n`),
  );

  app.get('/books/:book/airplane/import', { schema: { hide: true, params: bookParams } }, async ({ params }, reply) => {
    const { context } = await bookFor(desk, params.book);
    const view = airplaneImportPage({ json: '', why: '', who: '' }, [], context);
    return sendPage(reply, 'airplane-import', airplaneImportView, view);
  });

  app.post('/books/:book/airplane/import', { schema: { hide: true, params: bookParams } }, async (request, reply) => {
    const { book } = request.params;
    const form = formOf(request);
    const typed = { json: fieldOf(form, 'json'), why: fieldOf(form, 'why'), who: fieldOf(form, 'who') };
    const read = parsedJson(typed.json);
    const saved =
      'problem' in read
        ? { saved: false as const, problems: [read.problem] }
        : saveAirplane(desk, book, read.json, byOf(form));
    if (saved.saved) {
      return reply.redirect(bookPath(book, `/airplane?done=${saved.changed ? 'saved' : 'unchanged'}`), 303);
    }
    const { context } = await bookFor(desk, book);
    const view = airplaneImportPage(typed, problemsInWords(saved.problems), context);
    return sendPage(reply.code(422), 'airplane-import', airplaneImportView, view);
  });
}

/** What does not fit in a description, and what nobody has confirmed, by field. */
function doubtsIn(json: unknown): FieldProblem[] {
  const { airplane } = readAirplane(json);
  const remarks = airplane ? crossCheck(airplane) : [];
  return [
    ...remarks.flatMap(({ message, paths }) => paths.map((path) => ({ path, message }))),
    ...toConfirm(json).map((path) => ({
      path,
      message: 'To be confirmed: a usual or copied value. Saving this section says that it holds for this airplane.',
    })),
  ];
}

function parsedJson(text: string) {
  try {
    const json: unknown = JSON.parse(text);
    return { json };
  } catch (error) {
    const why = error instanceof Error ? error.message : '';
    return { problem: problem('bad-configuration', `The text is not JSON: ${why}.`, { field: 'json' }) };
  }
}
