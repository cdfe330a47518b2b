/** What holds for every route: one shape of failure, only our own page, security headers, a documented contract. */
import { describe, expect, it } from 'vitest';
import * as z from 'zod';
import { failureSchema } from '../../server/plugins/error-shape.ts';
import { appWithOuzel, fileBody } from './app-for-tests.ts';

const documentSchema = z.object({
  openapi: z.string(),
  paths: z.record(z.string(), z.record(z.string(), z.looseObject({ responses: z.record(z.string(), z.unknown()) }))),
});

describe('every route', () => {
  it('fails in one shape for a book, a log, a result or a job that is not there', async () => {
    const { ask } = await appWithOuzel();
    const { paths } = documentSchema.parse((await ask({ url: '/api/openapi.json' })).json());
    const wrong: string[] = [];
    let asked = 0;
    for (const [path, methods] of Object.entries(paths)) {
      if (!path.includes('{')) continue;
      for (const method of Object.keys(methods)) {
        const url = path.replaceAll(/\{(number|seq)\}/g, '7').replaceAll(/\{\w+\}/g, 'nothing');
        const answer = await ask({ method: z.enum(['GET', 'POST', 'PUT', 'DELETE']).parse(method.toUpperCase()), url });
        asked += 1;
        const read = failureSchema.safeParse(answer.json());
        if (!read.success || answer.statusCode < 400 || answer.statusCode >= 500) {
          wrong.push(`${method} ${url}: ${answer.statusCode} ${answer.body.slice(0, 100)}`);
        }
      }
    }
    expect(wrong).toEqual([]);
    expect(asked).toBeGreaterThan(25);
  });

  it.each([
    ['GET', '/api/nothing', 404, 'not-found'],
    ['GET', '/api/books/..%2f..%2fetc', 404, 'not-found'],
    ['GET', '/api/books/%00', 404, 'not-found'],
    ['GET', '/api/reductions/witchcraft', 404, 'unknown-kind'],
    ['POST', '/api/books', 400, 'bad-request'],
  ] as const)('%s %s gives %d %s', async (method, url, status, code) => {
    const { ask } = await appWithOuzel();
    const answer = await ask({ method, url });
    expect(answer.statusCode).toBe(status);
    expect(failureSchema.parse(answer.json()).problems[0]?.code).toBe(code);
  });

  it('says which field does not fit', async () => {
    const { ask, book } = await appWithOuzel();
    const url = `/api/books/${book}/hours`;
    const answer = await ask({ method: 'POST', url, payload: { date: '4 May', flightSeconds: -1 } });
    const { problems } = failureSchema.parse(answer.json());
    expect(answer.statusCode).toBe(400);
    expect(problems.map((one) => one.where.field)).toEqual(expect.arrayContaining(['date', 'flightSeconds']));
  });

  it('tells nothing of itself when it is at fault', async () => {
    const { ask, book, desk } = await appWithOuzel();
    desk.shelf.open(book).database.exec('DROP TABLE squawk');
    const answer = await ask({ url: `/api/books/${book}` });
    expect(answer.statusCode).toBe(500);
    expect(answer.json()).toMatchObject({ problems: [{ code: 'our-fault' }] });
    expect(answer.body).not.toMatch(/squawk|SQL|at .*\.ts/);
  });

  it('takes no more JSON than allowed', async () => {
    const { ask } = await appWithOuzel({ settings: { jsonLimitBytes: 1000 } });
    const answer = await ask({ method: 'POST', url: '/api/program', payload: { fill: 'x'.repeat(1001) } });
    expect(answer.statusCode).toBe(413);
    expect(answer.json()).toMatchObject({ problems: [{ code: 'too-large' }] });
  });

  it('bounds costly requests', async () => {
    const { ask, book } = await appWithOuzel({ settings: { costlyPerMinute: 2 } });
    const url = `/api/books/${book}/journal/verification`;
    const statuses = [];
    for (let i = 0; i < 3; i += 1) statuses.push((await ask({ url })).statusCode);
    expect(statuses).toEqual([200, 200, 429]);
    expect((await ask({ url })).json()).toMatchObject({ problems: [{ code: 'too-many-requests' }] });
    expect((await ask({ url: '/api/health' })).statusCode).toBe(200);
  });
});

describe('a request from elsewhere', () => {
  const health = '/api/health';
  it.each([
    ['another host', 'GET', { host: 'evil.example' }],
    ['a name pointed at this machine', 'GET', { host: 'evil.example:4170' }],
    ['a host that starts like ours', 'GET', { host: '127.0.0.1.evil.example' }],
    ['another page, reading', 'GET', { host: '127.0.0.1:4170', origin: 'http://evil.example' }],
    ['another port of this machine', 'POST', { host: '127.0.0.1:4170', origin: 'http://127.0.0.1:8000' }],
    ['a page without an origin', 'POST', { host: '127.0.0.1:4170', origin: 'null' }],
    ['another site, by the browser itself', 'POST', { host: 'localhost:4170', 'sec-fetch-site': 'cross-site' }],
  ] as const)('is refused: %s', async (_, method, headers) => {
    const { http } = await appWithOuzel();
    const answer = await http.inject({ method, url: method === 'GET' ? health : '/api/program', headers });
    expect(answer.statusCode).toBe(403);
    expect(answer.json()).toMatchObject({ problems: [{ code: 'refused-origin' }] });
  });

  it.each(['127.0.0.1:4170', 'localhost:4170', '[::1]:4170', 'LOCALHOST'])('is answered as %s', async (host) => {
    const { http } = await appWithOuzel();
    expect((await http.inject({ url: health, headers: { host } })).statusCode).toBe(200);
    const origin = `http://${host}`;
    const program = await http.inject({ method: 'POST', url: '/api/program', headers: { host, origin }, payload: {} });
    expect(program.statusCode).toBe(400);
  });

  it('may name any address in figures, but no name, once the owner opened the service to the network', async () => {
    const { http } = await appWithOuzel({ settings: { host: '0.0.0.0' } });
    const status = async (host: string) => (await http.inject({ url: health, headers: { host } })).statusCode;
    expect(await status('192.168.1.20:4170')).toBe(200);
    expect(await status('evil.example:4170')).toBe(403);
  });
});

describe('headers', () => {
  it('let nothing in from outside and nothing run inline', async () => {
    const { ask } = await appWithOuzel();
    const { headers } = await ask({ url: '/api/health' });
    const policy = String(headers['content-security-policy']);
    for (const part of ["default-src 'self'", "img-src 'self' data:", "frame-ancestors 'self'", "object-src 'none'"]) {
      expect(policy).toContain(part);
    }
    expect(policy).not.toMatch(/unsafe|https?:|\*/);
    expect(headers).toMatchObject({
      'x-content-type-options': 'nosniff',
      'cross-origin-resource-policy': 'same-origin',
    });
    expect(headers).not.toHaveProperty('strict-transport-security');
    expect(headers).not.toHaveProperty('access-control-allow-origin');
  });

  it('make a raw log a download whatever it holds', async () => {
    const { ask, book } = await appWithOuzel();
    const bytes = '<html><script>alert(1)</script>';
    const name = 'x</title><script>.html';
    const sent = await ask({ method: 'POST', url: `/api/books/${book}/logs`, ...fileBody(name, bytes) });
    const { log } = z.object({ log: z.object({ id: z.string() }) }).parse(sent.json());
    const raw = await ask({ url: `/api/books/${book}/logs/${log.id}/raw` });
    expect(raw.rawPayload.equals(Buffer.from(bytes))).toBe(true);
    expect(raw.headers['content-type']).toBe('application/octet-stream');
    expect(raw.headers['content-disposition']).toMatch(/^attachment; filename=/);
    expect(raw.headers['x-content-type-options']).toBe('nosniff');
  });
});
