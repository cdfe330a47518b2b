/** The real thing through the service: a ground run received, read, reduced, decided; hostile files answered in words. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import * as z from 'zod';
import { readerFor } from '../../../server/log-reader.ts';
import { reportSchema } from '../../../server/routes/api/answers.ts';
import { type AppForTests, appWithOuzel, fileBody } from '../app-for-tests.ts';

const RUN = readFileSync('sample-tests/ouzel/logs/ground-run-2.csv');
const inWorker = { readLog: readerFor({ workerAboveBytes: 0 }) };
const here = { readLog: readerFor({ workerAboveBytes: Number.MAX_SAFE_INTEGER }) };

async function upload({ ask, book }: AppForTests, name: string, bytes: Buffer | string): Promise<string> {
  const sent = await ask({ method: 'POST', url: `/api/books/${book}/logs`, ...fileBody(name, bytes) });
  return z.object({ log: z.object({ id: z.string() }) }).parse(sent.json()).log.id;
}

async function reportOf({ ask, book }: AppForTests, log: string) {
  const answer = await ask({ url: `/api/books/${book}/logs/${log}` });
  expect(answer.headers['content-type']).toBe('application/json; charset=utf-8');
  return z.object({ report: reportSchema }).parse(answer.json()).report;
}

describe('a ground run', () => {
  it('is read the same in a worker and in the service, reduced, looked at, decided and undone', async () => {
    const app = await appWithOuzel(inWorker);
    const log = await upload(app, 'ground-run-2.csv', RUN);
    const other = await appWithOuzel(here);
    const same = await upload(other, 'ground-run-2.csv', RUN);
    expect(same).toBe(log);
    expect(await reportOf(app, log)).toEqual(await reportOf(other, log));

    const post = (path: string, payload: object) =>
      app.ask({ method: 'POST', url: `/api/books/${app.book}/${path}`, payload });
    const request = { kind: 'cooling-ground', logs: [log], who: 'Ines' };
    const trial = (await post('results/trial', request)).json();
    const kept = (await post('results', request)).json();
    expect(kept).toMatchObject({ answer: 'stored', stored: { number: 1, status: 'proposed', who: 'Ines' } });
    expect(Object(kept).stored.result).toEqual(Object(trial).result);
    const decided = await post('results/1/decision', { decision: 'accepted', note: 'as expected', who: 'Ines' });
    expect(decided.json()).toMatchObject({ status: 'accepted', decidedBy: 'Ines', logNames: ['ground-run-2.csv'] });
    const conditions = await post('results/1/prediction', { conditions: { nonsense: true } });
    expect(conditions.statusCode).toBe(400);
    const raw = await app.ask({ url: `/api/books/${app.book}/logs/${log}/raw` });
    expect(raw.rawPayload.equals(RUN)).toBe(true);
  });

  it('read in a worker can be cancelled', async () => {
    const { desk, book, ...app } = await appWithOuzel(inWorker);
    const log = await upload({ ...app, desk, book }, 'ground-run-2.csv', RUN);
    const started = await app.ask({
      method: 'POST',
      url: `/api/books/${book}/jobs`,
      payload: { deed: 'read-log', log },
    });
    const { id } = z.object({ id: z.string() }).parse(started.json());
    await app.ask({ method: 'DELETE', url: `/api/jobs/${id}` });
    await app.ask({ url: `/api/jobs/${id}/events` });
    expect(desk.jobs.find(id)).toMatchObject({ state: 'cancelled', problems: [{ code: 'cancelled' }] });
  });
});

describe('a hostile file', () => {
  it.each([
    ['empty', 'empty.csv', '', 'empty-file'],
    ['a text', 'letter.csv', 'Dear Ines,\n\nall well here.\n', 'not-a-log'],
    ['a page', 'page.html', '<!doctype html><script>alert(1)</script>\n'.repeat(50), 'not-a-log'],
  ])('%s is kept, and answered with what is wrong and how to mend it', async (_, name, content, code) => {
    const app = await appWithOuzel(here);
    const report = await reportOf(app, await upload(app, name, content));
    expect(report).toMatchObject({ accepted: 'no', problems: [{ code }] });
  });

  it('with markup and formulas in its cells and its name comes out as text in JSON, never as a page', async () => {
    const app = await appWithOuzel(here);
    const header = 'Time [s],<img src=x onerror=alert(1)>,Coolant temp [degC],__proto__';
    const rows = Array.from({ length: 50 }, (_, i) => `${i},=HYPERLINK("http://x"),${80 + i / 10},1`);
    const log = await upload(app, '<b>run</b>.csv', `${[header, ...rows].join('\n')}\n`);
    const report = await reportOf(app, log);
    const columns = report.channels.map((one) => one.column);
    expect(columns.some((one) => one.includes('<img src=x onerror=alert(1)>'))).toBe(true);
    const page = await app.ask({ url: `/api/books/${app.book}/logs/${log}` });
    expect(page.headers).toMatchObject({ 'x-content-type-options': 'nosniff' });
    expect(page.headers['content-security-policy']).toContain("default-src 'self'");
  });
});
