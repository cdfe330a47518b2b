/** Uploads: kept byte for byte and given back so, whatever they are named or hold; bounded; never shown as a page. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import * as z from 'zod';
import { readLogBytes } from '../../../analysis/logs/index.ts';
import type { LogReader } from '../../../server/desk.ts';
import { type AppForTests, appWithOuzel, fileBody } from '../app-for-tests.ts';
import { plainReader } from '../plain-reader.ts';

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

describe('a log that was read', () => {
  const text = `Time,Coolant\n${Array.from({ length: 5000 }, (_, i) => `${i},${i === 2500 ? 130 : 80 + (i % 3)}`).join('\n')}\n`;
  const map = { columns: { Coolant: { quantity: 'coolant-temperature', unit: 'degC' } } };

  async function readable() {
    const app = await appWithOuzel({ readLog: plainReader().read });
    const { log } = received.parse((await send(app, 'run.csv', text)).json());
    return { ...app, url: `/api/books/${app.book}/logs/${log.id}` };
  }

  it('gives its reading, samples at chosen times, and takes a map', async () => {
    const { ask, url } = await readable();
    expect((await ask({ url })).json()).toMatchObject({ mapFrom: 'none', report: { accepted: 'ask', rows: 5000 } });
    const mapped = await ask({ method: 'PUT', url: `${url}/map`, payload: { map, who: 'Ines' } });
    expect(mapped.json()).toMatchObject({ mapFrom: 'confirmed', map, report: { accepted: 'yes' } });
    const sampled = (await ask({ url: `${url}?sample=0,2500` })).json();
    expect(sampled).toMatchObject({ report: { channels: [{ samples: [{ t: 0 }, { t: 2500, value: 130 }] }] } });
    expect((await ask({ url: `${url}?sample=soon` })).statusCode).toBe(400);
    const bad = await ask({ method: 'PUT', url: `${url}/map`, payload: { map: { columns: { Coolant: 1 } } } });
    expect([bad.statusCode, bad.json()]).toMatchObject([400, { problems: [{ code: 'bad-map' }] }]);
  });

  it('gives traces thinned to what can be seen, with every peak', async () => {
    const { ask, url } = await readable();
    const traces = z.object({
      traces: z.array(z.object({ column: z.string(), x: z.array(z.number()), y: z.array(z.number().nullable()) })),
    });
    const all = traces.parse((await ask({ url: `${url}/traces?width=100` })).json()).traces[0];
    expect(all?.x.length).toBeLessThan(500);
    expect(Math.max(...(all?.y ?? []).map((one) => one ?? 0))).toBe(130);
    const part = traces.parse((await ask({ url: `${url}/traces?columns=Coolant&from=10&to=20` })).json()).traces[0];
    expect(part?.x.every((one) => one >= 9 && one <= 21)).toBe(true);
    expect(traces.parse((await ask({ url: `${url}/traces?columns=Elsewhere` })).json()).traces).toEqual([]);
  });

  it('is read as a job', async () => {
    const { ask, url, book } = await readable();
    const payload = { deed: 'read-log', log: url.split('/').at(-1) };
    const job = z
      .object({ id: z.string() })
      .parse((await ask({ method: 'POST', url: `/api/books/${book}/jobs`, payload })).json());
    await ask({ url: `/api/jobs/${job.id}/events` });
    const done = (await ask({ url: `/api/jobs/${job.id}` })).json();
    expect(done).toMatchObject({ state: 'done', outcome: { accepted: 'ask', rows: 5000 } });
  });
});

describe('a recorder nobody knows', () => {
  const HEAD = 'Tag;Uhr;Fühler 3;Temp 1;Alt;Comp';
  const row = (i: number, base: number) =>
    `04/05/2031;10:00:${String(i).padStart(2, '0')};${(base + i / 10).toFixed(1)};${80 + i};${2000 + 3 * i};${i % 7}`;
  const fileOf = (base: number) => `${HEAD}\n${Array.from({ length: 60 }, (_, i) => row(i, base)).join('\n')}\n`;
  const page = async ({ ask, book }: AppForTests, log: string) =>
    (await ask({ method: 'GET', url: `/books/${book}/logs/${log}` })).body;

  it('is asked about, answered on its page, and read without a question the next time', async () => {
    // The real reader, without its worker.
    const readLog: LogReader = async (path, options) => readLogBytes(readFileSync(path), options);
    const app = await appWithOuzel({ readLog });
    const { log } = received.parse((await send(app, 'new.csv', fileOf(70))).json());
    const asked = await page(app, log.id);
    expect(asked).toContain('Which comes first in the dates of this file?');
    expect(asked).toContain('What is the column &quot;Temp 1&quot;?');
    expect(asked).toContain('What is the column &quot;Alt&quot;?');
    expect(asked).toContain('the date is asked for below');
    expect(asked).toContain(HEAD);
    const answers: [string, string][] = [
      ['column.0.name', 'Fühler 3'],
      ['column.0.quantity', 'fuel-temperature'],
      ['column.0.unit', 'degC'],
      ['column.1.name', 'Temp 1'],
      ['column.1.quantity', 'coolant-temperature'],
      ['column.1.unit', 'degC'],
      ['column.2.name', 'Alt'],
      ['column.2.quantity', 'pressure-altitude'],
      ['column.2.unit', 'ft'],
      ['column.3.name', 'Comp'],
      ['column.3.quantity', ''],
      ['column.3.unit', ''],
      ['dayFirst', 'yes'],
      ['offset', '+02:00'],
    ];
    const kept = await app.ask({
      method: 'POST',
      url: `/books/${app.book}/logs/${log.id}/map`,
      headers: { 'content-type': 'application/x-www-form-urlencoded' },
      payload: new URLSearchParams(answers).toString(),
    });
    expect(kept.statusCode).toBe(303);
    const answered = await page(app, log.id);
    expect(answered).not.toContain('Must not be guessed');
    expect(answered).toContain('Read by the channel table you confirmed for this file.');
    expect(answered).toContain('08:00 UTC');
    const next = received.parse((await send(app, 'next.csv', fileOf(60))).json());
    const offered = await page(app, next.log.id);
    expect(offered).toContain('Read by the channel table you confirmed for new.csv, which has the same header.');
    expect(offered).not.toContain('Must not be guessed');
  });
});
