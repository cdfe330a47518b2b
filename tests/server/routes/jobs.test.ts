/** Long work: started, followed by server-sent events, cancelled; its failures have the shape of all failures. */
import { describe, expect, it } from 'vitest';
import * as z from 'zod';
import { appWithOuzel } from '../app-for-tests.ts';

const jobSchema = z.object({ id: z.string(), state: z.string(), outcome: z.unknown(), problems: z.array(z.unknown()) });

function eventsIn(body: string) {
  return body
    .split('\n\n')
    .filter((block) => block !== '')
    .map((block) => {
      const [name, data] = block.split('\n');
      expect(name).toBe('event: job');
      return jobSchema.parse(JSON.parse(data?.replace(/^data: /, '') ?? ''));
    });
}

describe('a job', () => {
  it('is followed to its end', async () => {
    const { ask, book } = await appWithOuzel();
    const started = await ask({ method: 'POST', url: `/api/books/${book}/jobs`, payload: { deed: 'verify' } });
    expect(started.statusCode).toBe(202);
    const { id } = jobSchema.parse(started.json());
    const events = await ask({ url: `/api/jobs/${id}/events` });
    expect(events.headers['content-type']).toBe('text/event-stream');
    expect(eventsIn(events.body).at(-1)).toMatchObject({ state: 'done', outcome: { broken: [] } });
    expect((await ask({ url: `/api/jobs/${id}` })).json()).toMatchObject({ state: 'done' });
    expect((await ask({ url: '/api/jobs' })).json()).toMatchObject({ jobs: [{ id }] });
  });

  it('says how it failed', async () => {
    const { ask, book } = await appWithOuzel();
    const payload = { deed: 'reduce', kind: 'witchcraft' };
    const { id } = jobSchema.parse((await ask({ method: 'POST', url: `/api/books/${book}/jobs`, payload })).json());
    const events = eventsIn((await ask({ url: `/api/jobs/${id}/events` })).body);
    expect(events.at(-1)).toMatchObject({ state: 'failed', problems: [{ code: 'unknown-kind' }] });
  });

  it('is cancelled, and tells its watchers', async () => {
    const { ask, desk } = await appWithOuzel();
    const job = desk.jobs.start('Waiting', (_, signal) => {
      return new Promise((_resolve, reject) => signal.addEventListener('abort', () => reject(signal.reason)));
    });
    const events = ask({ url: `/api/jobs/${job.id}/events` });
    await ask({ method: 'DELETE', url: `/api/jobs/${job.id}` });
    expect(eventsIn((await events).body).at(-1)).toMatchObject({ state: 'cancelled', outcome: null });
  });

  it('does not hold up a shutdown, and neither does whoever watches it', async () => {
    const app = await appWithOuzel();
    const job = app.desk.jobs.start('Waiting', (_, signal) => {
      return new Promise((_resolve, reject) => signal.addEventListener('abort', () => reject(signal.reason)));
    });
    const events = app.ask({ url: `/api/jobs/${job.id}/events` });
    const started = performance.now();
    await app.close();
    await events;
    expect(performance.now() - started).toBeLessThan(2000);
    expect(app.desk.jobs.find(job.id).state).toBe('cancelled');
  });

  it('is not started on a book or log that is not there', async () => {
    const { ask, book } = await appWithOuzel();
    const post = (url: string, payload: object) => ask({ method: 'POST', url, payload });
    expect((await post('/api/books/none/jobs', { deed: 'verify' })).statusCode).toBe(404);
    const reading = { deed: 'read-log', log: '0'.repeat(64) };
    expect((await post(`/api/books/${book}/jobs`, reading)).statusCode).toBe(404);
    expect((await post(`/api/books/${book}/jobs`, { deed: 'fly' })).statusCode).toBe(400);
  });
});
