/** Results: made, looked at, segments moved, decided, used to predict, put away. */
import * as z from 'zod';
import type { Prediction } from '../../../analysis/reductions/index.ts';
import { InputProblem, problem } from '../../../analysis/remarks/index.ts';
import type { Chart } from '../../../templates/charts/chart.ts';
import { chartsOf } from '../../../templates/charts/index.ts';
import { readShaped } from '../../../templates/forms/airplane-reading.ts';
import { schemaFields } from '../../../templates/forms/schema-shape.ts';
import { clocksPath } from '../../../templates/pages/clocks.view.ts';
import type { PageContext } from '../../../templates/pages/kept.ts';
import { logPath } from '../../../templates/pages/logs.view.ts';
import { type ResultShown, resultPage, resultView } from '../../../templates/pages/result.view.ts';
import { resultPath, resultsPage, resultsView } from '../../../templates/pages/results.view.ts';
import { segmentColumns, segmentTraces } from '../../../templates/pages/segment-traces.ts';
import { readSegments } from '../../../templates/pages/segments-form.ts';
import { bookPath } from '../../../templates/parts/frame.view.ts';
import { problemsInWords } from '../../../templates/parts/remarks.view.ts';
import { resultTableAsCsv } from '../../../templates/words/result-table.ts';
import { consequencesOf } from '../../actions/consequences-of.ts';
import { decideResult } from '../../actions/decide-result.ts';
import { predict } from '../../actions/predict.ts';
import { putAway } from '../../actions/put-away.ts';
import { readStoredLog } from '../../actions/read-stored-log.ts';
import { reduce } from '../../actions/reduce.ts';
import { knownReduction } from '../../actions/reduce-recording.ts';
import { resultOf } from '../../actions/result-of.ts';
import { tracesOf } from '../../actions/traces-of.ts';
import type { StoredResult } from '../../book/book-state.ts';
import { decisionSchema } from '../../book/entry.ts';
import type { Desk } from '../../desk.ts';
import { COSTLY } from '../../plugins/rate-limit.ts';
import { type Api, bookParams, numberParams, type Service } from '../api/api.ts';
import { doneQuery } from './home.ts';
import { bookFor, byOf, doneOf, type Form, fieldOf, formOf, sendPage } from './pages.ts';

const anyQuery = z.record(z.string(), z.union([z.string(), z.array(z.string())]));

export function resultRoutes(app: Api, { desk }: Service): void {
  const viewOf = async (book: string, number: number, shown: Omit<ResultShown, 'titles'>) => {
    const { state, context } = await bookFor(desk, book);
    const kept = await resultOf(desk, book, number);
    const titles = new Map(state.testStatus.map((one) => [one.test, one.title]));
    const airplane = state.airplane.parsed;
    const consequences = kept.kind === 'airspeed' ? { consequences: await consequencesOf(desk, book, number) } : {};
    const others = state.results.filter((one) => one.kind === kept.kind && one.number !== number).reverse();
    return resultPage(
      kept,
      { titles, airplane, others, traces: await tracesUnder(desk, book, kept, context), ...consequences, ...shown },
      context,
    );
  };

  app.get(
    '/books/:book/results',
    { schema: { hide: true, params: bookParams, querystring: doneQuery } },
    async ({ params, query }, reply) => {
      const { state, context } = await bookFor(desk, params.book);
      return sendPage(reply, 'results', resultsView, resultsPage(state.results, context, doneOf(query)));
    },
  );

  app.post(
    '/books/:book/results',
    { config: COSTLY, schema: { hide: true, params: bookParams } },
    async (request, reply) => {
      const { book } = request.params;
      const form = formOf(request);
      const tests = form.get('test');
      const logs = [...new Set(form.get('log') ?? [])];
      const wanted = { kind: fieldOf(form, 'kind'), logs, ...(tests ? { tests: [...tests] } : {}) };
      const answer = await reduce(desk, book, wanted, byOf(form));
      return reply.redirect(placeOf(book, logs, answer), 303);
    },
  );

  app.get(
    '/books/:book/results/:number',
    { schema: { hide: true, params: numberParams, querystring: anyQuery } },
    async ({ params, query }, reply) => {
      const prediction = query.predict === undefined ? undefined : await predicted(params.book, params.number, query);
      const done = doneOf({ done: typeof query.done === 'string' ? query.done : undefined });
      const view = await viewOf(params.book, params.number, { done, ...(prediction ? { prediction } : {}) });
      return sendPage(reply, 'result', resultView, view);
    },
  );

  const predicted = async (book: string, number: number, query: z.output<typeof anyQuery>) => {
    const typed: Form = new Map(Object.entries(query).map(([name, value]) => [name, [value].flat()]));
    const { kind } = await resultOf(desk, book, number);
    const schema = (await knownReduction(kind)).conditionsSchema;
    const read = readShaped(schema ? schemaFields(schema) : [], 'conditions', typed);
    if (read.problems.length > 0) return { typed, problems: read.problems, answer: null };
    try {
      const answer: Prediction = await predict(desk, book, number, read.json);
      return { typed, problems: [], answer };
    } catch (error) {
      if (!(error instanceof InputProblem)) throw error;
      const problems = error.problems.map(({ message, where }) => ({
        path: `conditions.${where.field ?? ''}`,
        message,
      }));
      return { typed, problems, answer: null };
    }
  };

  app.post(
    '/books/:book/results/:number/decide',
    { schema: { hide: true, params: numberParams } },
    async (request, reply) => {
      const { book, number } = request.params;
      const form = formOf(request);
      const decision = decisionSchema.safeParse(fieldOf(form, 'decision'));
      if (!decision.success)
        throw new InputProblem([problem('bad-request', 'Say what you decide.', { field: 'decision' })]);
      await decideResult(
        desk,
        book,
        number,
        { decision: decision.data, note: fieldOf(form, 'note').slice(0, 4000) },
        byOf(form),
      );
      return reply.redirect(`${resultPath(book, number)}?done=decided`, 303);
    },
  );

  app.post(
    '/books/:book/results/:number/segments',
    { config: COSTLY, schema: { hide: true, params: numberParams } },
    async (request, reply) => {
      const { book, number } = request.params;
      const form = formOf(request);
      const { kind, input, tests } = await resultOf(desk, book, number);
      const { segments, problems } = readSegments(form);
      const again = async (items = problems) =>
        sendPage(reply.code(422), 'result', resultView, await viewOf(book, number, { problems: items }));
      if (problems.length > 0) return again();
      try {
        const { logs, points, options, shifts } = input;
        // by the calibration in force today, unless none was wanted
        const calibration = input.calibration === null ? null : undefined;
        const answer = await reduce(
          desk,
          book,
          { kind, logs, points, options, calibration, shifts, tests, segments },
          { ...byOf(form), why: fieldOf(form, 'reason') },
        );
        return reply.redirect(placeOf(book, logs, answer), 303);
      } catch (error) {
        if (!(error instanceof InputProblem)) throw error;
        return again(problemsInWords(error.problems));
      }
    },
  );

  app.get(
    '/books/:book/results/:number/tables/:table',
    { schema: { hide: true, params: numberParams.extend({ table: z.string() }) } },
    async ({ params }, reply) => {
      const { context } = await bookFor(desk, params.book);
      const { result } = await resultOf(desk, params.book, params.number);
      const table = result.tables[Number(params.table.replace(/\.csv$/, ''))];
      if (!table) throw new InputProblem([problem('not-found', 'The result has no such table.')]);
      return reply
        .type('text/csv; charset=utf-8')
        .header(
          'content-disposition',
          `attachment; filename="result-${params.number}-${table.name.replace(/[^a-z0-9-]/g, '')}.csv"`,
        )
        .send(resultTableAsCsv(table, context.units));
    },
  );

  app.post(
    '/books/:book/results/:number/away',
    { schema: { hide: true, params: numberParams } },
    async (request, reply) => {
      const { book, number } = request.params;
      await putAway(desk, book, { what: 'result', id: number }, byOf(formOf(request)));
      return reply.redirect(bookPath(book, '/results?done=away'), 303);
    },
  );
}

/** Traces under the segments of a result, for kinds whose own charts do not show them. */
async function tracesUnder(desk: Desk, book: string, kept: StoredResult, context: PageContext): Promise<Chart[]> {
  if (chartsOf(kept.result, context.units).some((one) => one.spans.length > 0)) return [];
  const charts: Chart[] = [];
  for (const id of kept.input.logs) {
    const { log, outcome } = await readStoredLog(desk, book, id);
    const channels = outcome.table?.channels ?? [];
    const columns = segmentColumns(kept.kind, channels);
    const traces = await tracesOf(desk, book, id, { columns });
    charts.push(...segmentTraces(kept, { ...log, seconds: outcome.time.durationSeconds }, channels, traces, context));
  }
  return charts;
}

/** Where a reduction leads: to its result, or to the log whose questions come first. */
export function placeOf(book: string, logs: readonly string[], answer: Awaited<ReturnType<typeof reduce>>): string {
  if (answer.answer === 'stored') return `${resultPath(book, answer.stored.number)}?done=reduced`;
  if (answer.apart !== null) return `${clocksPath(book, logs[0] ?? '', answer.apart)}?done=apart`;
  return `${logPath(book, logs[0] ?? '')}?done=asked#channels`;
}
