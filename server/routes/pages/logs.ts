/** Logs: brought in, looked at, confirmed, put away. */
import * as z from 'zod';
import { InputProblem, problem } from '../../../analysis/remarks/index.ts';
import { traceDataset } from '../../../templates/charts/trace.ts';
import { logPage, logView, usualColumns } from '../../../templates/pages/log.view.ts';
import { readLogMap } from '../../../templates/pages/log-map.ts';
import { logPath, logsPage, logsView } from '../../../templates/pages/logs.view.ts';
import { bookPath } from '../../../templates/parts/frame.view.ts';
import { type ProblemPart, problemsInWords } from '../../../templates/parts/remarks.view.ts';
import { confirmMap } from '../../actions/confirm-map.ts';
import { putAway } from '../../actions/put-away.ts';
import { readStoredLog, type StoredReading } from '../../actions/read-stored-log.ts';
import { receiveLog } from '../../actions/receive-log.ts';
import { tracesOf } from '../../actions/traces-of.ts';
import { type Api, bookParams, logParams, type Service } from '../api/api.ts';
import { doneQuery } from './home.ts';
import { bookFor, byOf, doneOf, formOf, sendPage } from './pages.ts';

const several = z
  .union([z.string(), z.array(z.string())])
  .transform((one) => [one].flat())
  .optional();

const logQuery = doneQuery.extend({
  columns: several,
  from: z.coerce.number().optional(),
  to: z.coerce.number().optional(),
});

const samplesQuery = logQuery.extend({ width: z.coerce.number().int().min(10).max(10_000).optional() });

interface LogShowing {
  columns?: string[] | undefined;
  span?: { from: number; to: number } | undefined;
  problems?: ProblemPart[];
  done?: string;
}

export function logRoutes(app: Api, { desk }: Service): void {
  app.get(
    '/books/:book/logs',
    { schema: { hide: true, params: bookParams, querystring: doneQuery } },
    async ({ params, query }, reply) => {
      const { state, context } = await bookFor(desk, params.book);
      return sendPage(reply, 'logs', logsView, logsPage(state.logs, state.results, context, doneOf(query)));
    },
  );

  app.post('/books/:book/logs', { schema: { hide: true, params: bookParams } }, async (request, reply) => {
    const { book } = request.params;
    const part = request.isMultipart() ? await request.file() : undefined;
    if (!part) throw new InputProblem([problem('bad-request', 'The request holds no file.')]);
    const { log } = await receiveLog(desk, book, part.file, part.filename);
    return reply.redirect(`${logPath(book, log.id)}?done=received`, 303);
  });

  const logViewOf = async (book: string, reading: StoredReading, showing: LogShowing) => {
    const { state, context } = await bookFor(desk, book);
    const id = reading.log.id;
    const columns = showing.columns ?? usualColumns(reading.outcome);
    const traces = await tracesOf(desk, book, id, { columns, ...showing.span });
    const titles = new Map(state.testStatus.map((one) => [one.test, one.title]));
    const others = state.logs.filter((one) => one.id !== id);
    const { problems, done = '', span } = showing;
    return logPage(
      { ...reading, others, results: state.results, titles },
      { columns, traces, span, done, ...(problems ? { problems } : {}) },
      context,
    );
  };

  app.get(
    '/books/:book/logs/:log',
    { schema: { hide: true, params: logParams, querystring: logQuery } },
    async ({ params, query }, reply) => {
      const reading = await readStoredLog(desk, params.book, params.log);
      const { columns, from, to } = query;
      const span = from === undefined || to === undefined || !(to > from) ? undefined : { from, to };
      return sendPage(
        reply,
        'log',
        logView,
        await logViewOf(params.book, reading, { columns, span, done: doneOf(query) }),
      );
    },
  );

  app.post('/books/:book/logs/:log/map', { schema: { hide: true, params: logParams } }, async (request, reply) => {
    const { book, log } = request.params;
    const form = formOf(request);
    const map = readLogMap(form);
    try {
      await confirmMap(desk, book, log, map, byOf(form));
      return reply.redirect(`${logPath(book, log)}?done=mapped`, 303);
    } catch (error) {
      if (!(error instanceof InputProblem)) throw error;
      const reading = await readStoredLog(desk, book, log);
      const problems = problemsInWords(error.problems);
      return sendPage(reply.code(422), 'log', logView, await logViewOf(book, { ...reading, map }, { problems }));
    }
  });

  app.get(
    '/books/:book/logs/:log/samples',
    { schema: { hide: true, params: logParams, querystring: samplesQuery } },
    async ({ params, query }, reply) => {
      const { context } = await bookFor(desk, params.book);
      const traces = await tracesOf(desk, params.book, params.log, query);
      return reply
        .type('application/json; charset=utf-8')
        .send(JSON.stringify({ datasets: traces.map((one) => traceDataset(one, context.units)) }));
    },
  );

  app.post('/books/:book/logs/:log/away', { schema: { hide: true, params: logParams } }, async (request, reply) => {
    const { book, log } = request.params;
    await putAway(desk, book, { what: 'log', id: log }, byOf(formOf(request)));
    return reply.redirect(bookPath(book, '/logs?done=away'), 303);
  });
}
