/** Long work, watched: a page or a script starts it, follows it by server-sent events, cancels it. */
import { Readable } from 'node:stream';
import * as z from 'zod';
import { startJob } from '../../actions/start-job.ts';
import { problemSchema } from '../../book/book-state.ts';
import type { Job } from '../../jobs.ts';
import { COSTLY } from '../../plugins/rate-limit.ts';
import { type Api, bookParams, type Service } from './api.ts';
import { cardsBody } from './cards.ts';
import { planBody } from './plan.ts';
import { reduceBody } from './reduce-body.ts';

export const jobSchema = z.object({
  id: z.string(),
  title: z.string(),
  state: z.enum(['working', 'done', 'failed', 'cancelled']),
  progress: z.object({ done: z.number(), total: z.number(), words: z.string() }),
  outcome: z.unknown(),
  problems: z.array(problemSchema),
});

const deed = z.discriminatedUnion('deed', [
  z.object({ deed: z.literal('read-log'), log: z.string() }),
  reduceBody.extend({ deed: z.literal('reduce') }),
  cardsBody.extend({ deed: z.literal('print') }),
  planBody.extend({ deed: z.literal('print-plan') }),
  z.object({ deed: z.literal('verify') }),
]);

const params = z.object({ job: z.string() });

export function jobRoutes(api: Api, { desk, inWork }: Service): void {
  api.post(
    '/books/:book/jobs',
    { config: COSTLY, schema: { params: bookParams, body: deed, response: { 202: jobSchema } } },
    async ({ params: { book }, body }, reply) => reply.code(202).send(startJob(desk, book, body)),
  );

  api.get('/jobs', { schema: { response: { 200: z.object({ jobs: z.array(jobSchema) }) } } }, async () => ({
    jobs: desk.jobs.list(),
  }));

  api.get('/jobs/:job', { schema: { params, response: { 200: jobSchema } } }, async (request) =>
    desk.jobs.find(request.params.job),
  );

  api.delete('/jobs/:job', { schema: { params, response: { 200: jobSchema } } }, async (request) =>
    desk.jobs.cancel(request.params.job),
  );

  api.get('/jobs/:job/events', { schema: { params } }, async (request, reply) => {
    const stream = new Readable({ read: () => {} });
    const leave = desk.jobs.watch(request.params.job, (job: Job) => {
      stream.push(`event: job\ndata: ${JSON.stringify(job)}\n\n`);
      if (job.state !== 'working') stream.push(null);
    });
    const forget = inWork.holdOpen(() => stream.push(null));
    stream.on('close', () => {
      leave();
      forget();
    });
    return reply.type('text/event-stream').header('cache-control', 'no-store').send(stream);
  });
}
