/** Uploads: kept byte for byte and given back so, whatever they are named or hold; bounded; never shown as a page. */
import { describe, expect, it } from 'vitest';
import * as z from 'zod';
import { type AppForTests, appWithOuzel, fileBody } from '../app-for-tests.ts';

const received = z.object({
  log: z.object({ id: z.string(), name: z.string(), size: z.number() }),
  known: z.boolean(),
});

async function send({ ask, book }: AppForTests, name: string, bytes: Buffer | string) {
  return ask({ method: 'POST', url: `/api/books/${book}/logs`, ...fileBody(name, bytes) });
}

describe('an uploaded log', () => {
  it.each([
    ['plain', 'run.csv', 'Time,CHT\r\n0,80\r\n'],
    ['empty', 'empty.csv', ''],
    ['with every byte', 'bytes.bin', Buffer.from(Array.from({ length: 1024 }, (_, i) => i % 256))],
    ['named like a path', '../../../etc/passwd', 'x'],
    ['named like a page', '<img src=x onerror=alert(1)>.csv', 'y'],
    ['holding a page', 'page.html', '<script>alert(1)</script>'],
    ['holding formulas', 'formula.csv', '=cmd|"/C calc"!A0,@SUM(1)\n'],
  ])('%s comes back byte for byte as a download', async (_, name, content) => {
    const app = await appWithOuzel();
    const bytes = Buffer.from(content);
    const answer = await send(app, name, bytes);
    expect(answer.statusCode).toBe(201);
    const { log } = received.parse(answer.json());
    expect(log.size).toBe(bytes.length);
    expect(log.name).not.toMatch(/[/\\]/);
    const raw = await app.ask({ url: `/api/books/${app.book}/logs/${log.id}/raw` });
    expect(raw.rawPayload.equals(bytes)).toBe(true);
    expect(raw.headers).toMatchObject({
      'content-type': 'application/octet-stream',
      'x-content-type-options': 'nosniff',
      'cross-origin-resource-policy': 'same-origin',
    });
    expect(raw.headers['content-disposition']).toMatch(/^attachment;/);
  });

  it('is known when it comes again, put away and brought back', async () => {
    const app = await appWithOuzel();
    const { log } = received.parse((await send(app, 'run.csv', 'a')).json());
    expect(received.parse((await send(app, 'again.csv', 'a')).json())).toMatchObject({ known: true, log });
    const url = `/api/books/${app.book}/logs/${log.id}`;
    expect((await app.ask({ method: 'DELETE', url })).statusCode).toBe(204);
    expect((await app.ask({ url: `${url}/raw` })).statusCode).toBe(404);
    expect((await app.ask({ method: 'POST', url: `${url}/return` })).statusCode).toBe(204);
    expect((await app.ask({ url: `${url}/raw` })).body).toBe('a');
  });

  it('larger than allowed is refused and not kept', async () => {
    const app = await appWithOuzel({ settings: { uploadLimitBytes: 1000, archiveLimitBytes: 1000 } });
    const answer = await send(app, 'big.csv', Buffer.alloc(1001));
    expect(answer.statusCode).toBe(413);
    expect(answer.json()).toMatchObject({ problems: [{ code: 'too-large' }] });
    expect((await send(app, 'exact.csv', Buffer.alloc(1000))).statusCode).toBe(201);
    expect((await app.ask({ url: `/api/books/${app.book}` })).json()).toMatchObject({ logs: [{ name: 'exact.csv' }] });
  });

  it('is wanted: a request without a file is refused', async () => {
    const app = await appWithOuzel();
    const url = `/api/books/${app.book}/logs`;
    const answer = await app.ask({ method: 'POST', url, payload: { no: 'file' } });
    expect(answer.statusCode).toBeGreaterThanOrEqual(400);
    expect(answer.statusCode).toBeLessThan(500);
  });

  it('cannot be reached by another path', async () => {
    const app = await appWithOuzel();
    for (const log of ['..%2f..%2fbook.db', '%2e%2e', 'book.db', '0'.repeat(64)]) {
      expect((await app.ask({ url: `/api/books/${app.book}/logs/${log}/raw` })).statusCode).toBe(404);
    }
  });
});
