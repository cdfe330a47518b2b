/** Tests of a person's own, tests left out, and how the program is counted. */
import * as z from 'zod';
import type { TestData } from '../../../analysis/catalogue/index.ts';
import { InputProblem, problem } from '../../../analysis/remarks/index.ts';
import { readOwnTest, type TypedTest, typedOwnTest } from '../../../templates/pages/own-test-form.ts';
import {
  programCountingPage,
  programCountingView,
  readCounting,
} from '../../../templates/pages/program-counting.view.ts';
import { programOwnPage, programOwnView } from '../../../templates/pages/program-own.view.ts';
import { testPath } from '../../../templates/pages/test.view.ts';
import { bookPath } from '../../../templates/parts/frame.view.ts';
import type { ProblemPart } from '../../../templates/parts/remarks.view.ts';
import { countProgram } from '../../actions/count-program.ts';
import { leaveOutTest } from '../../actions/leave-out-test.ts';
import { ownTestsOf, saveOwnTest, withdrawOwnTest } from '../../actions/own-tests.ts';
import { type Api, bookParams, type Service } from '../api/api.ts';
import { doneQuery } from './home.ts';
import { bookFor, byOf, doneOf, fieldOf, formOf, planIn, sendPage } from './pages.ts';

const testParams = bookParams.extend({ test: z.string() });

export function ownTestRoutes(app: Api, { desk }: Service): void {
  const own = async (book: string, form: { typed?: TypedTest; problems?: ProblemPart[]; id?: string } = {}) => {
    const opened = await bookFor(desk, book);
    const { program } = planIn(opened);
    return { program, view: programOwnPage(program, opened.context, form) };
  };

  app.get('/books/:book/program/own', { schema: { hide: true, params: bookParams } }, async ({ params }, reply) =>
    sendPage(reply, 'program-own', programOwnView, (await own(params.book)).view),
  );

  app.get(
    '/books/:book/program/own/:test',
    { schema: { hide: true, params: testParams } },
    async ({ params }, reply) => {
      const kept = ownTestsOf(desk, params.book).find((one) => one.test === params.test);
      if (!kept) throw new InputProblem([problem('not-found', 'There is no test of your own at this address.')]);
      const { tests } = await read([kept.file]);
      const typed = tests[0] ? typedOwnTest(tests[0]) : {};
      return sendPage(reply, 'program-own', programOwnView, (await own(params.book, { typed, id: params.test })).view);
    },
  );

  for (const url of ['/books/:book/program/own', '/books/:book/program/own/:test']) {
    app.post(url, { schema: { hide: true, params: bookParams } }, async (request, reply) => {
      const { book } = request.params;
      const form = formOf(request);
      const { program } = await own(book);
      const names = new Map(
        program.stages.flatMap(({ tests }) => tests.map((test) => [test.title.toLowerCase(), test.id])),
      );
      const { typed, file, problems } = readOwnTest((name) => fieldOf(form, name), names);
      try {
        if (problems.length === 0) {
          const saved = await saveOwnTest(desk, book, file, byOf(form));
          return reply.redirect(`${testPath(book, saved.id)}?done=own`, 303);
        }
      } catch (error) {
        if (!(error instanceof InputProblem)) throw error;
        problems.push(...error.problems.map(({ message, mend }) => ({ message: `${message}.`, mend, where: '' })));
      }
      const { view } = await own(book, { typed, problems, id: fieldOf(form, 'id') });
      return sendPage(reply.code(422), 'program-own', programOwnView, view);
    });
  }

  app.post(
    '/books/:book/program/own/:test/withdraw',
    { schema: { hide: true, params: testParams } },
    async (request, reply) => {
      const { book, test } = request.params;
      await withdrawOwnTest(desk, book, test, byOf(formOf(request)));
      return reply.redirect(bookPath(book, '/program?done=withdrawn'), 303);
    },
  );

  app.post(
    '/books/:book/program/:test/left-out',
    { schema: { hide: true, params: testParams } },
    async (request, reply) => {
      const { book, test } = request.params;
      const form = formOf(request);
      const out = fieldOf(form, 'out') !== 'no';
      const words = {
        reason: fieldOf(form, 'reason').slice(0, 4000),
        instead: fieldOf(form, 'instead').slice(0, 4000),
      };
      await leaveOutTest(desk, book, test, { out, ...words }, byOf(form));
      return reply.redirect(bookPath(book, `/program?done=${out ? 'leftout' : 'takenin'}`), 303);
    },
  );

  const counting = async (book: string) => {
    const opened = await bookFor(desk, book);
    const { airplane, program } = planIn(opened);
    return { airplane, program, context: opened.context };
  };

  app.get(
    '/books/:book/program/hours',
    { schema: { hide: true, params: bookParams, querystring: doneQuery } },
    async ({ params, query }, reply) => {
      const { airplane, program, context } = await counting(params.book);
      const view = programCountingPage(airplane, program, context, {}, doneOf(query));
      return sendPage(reply, 'program-counting', programCountingView, view);
    },
  );

  app.post('/books/:book/program/hours', { schema: { hide: true, params: bookParams } }, async (request, reply) => {
    const { book } = request.params;
    const form = formOf(request);
    const { airplane, program, context } = await counting(book);
    const read = readCounting((name) => fieldOf(form, name), program);
    if (!read.counting) {
      const view = programCountingPage(airplane, program, context, read);
      return sendPage(reply.code(422), 'program-counting', programCountingView, view);
    }
    countProgram(desk, book, { counting: read.counting, limitations: read.limitations }, byOf(form));
    return reply.redirect(bookPath(book, '/program/hours?done=counting'), 303);
  });
}

async function read(files: readonly unknown[]): Promise<{ tests: TestData[] }> {
  const { readOwnTests } = await import('../../../analysis/catalogue/index.ts');
  return readOwnTests(files);
}
