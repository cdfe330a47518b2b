/** Written cards over the API: begun, written on, taken back, reduced with the card as the source, exported, verified. */
import { describe, expect, it } from 'vitest';
import * as z from 'zod';
import { verifyBook } from '../../../server/actions/verify-book.ts';
import { type AppForTests, appWithOuzel } from '../app-for-tests.ts';

const begun = z.object({ number: z.int(), lastEntry: z.int(), changedAt: z.string() });

async function begin(app: AppForTests, boxes: Record<string, string>, test = 'ground-cooling-fan-hold') {
  const payload = { test, boxes, who: 'Ines' };
  const answer = await app.ask({ method: 'POST', url: `/api/books/${app.book}/written`, payload });
  return { answer, kept: begun.safeParse(answer.json()).data };
}

/** A hold of 30 min with a rise no thermostat bends, read every three. */
const HOLD: Record<string, string> = {
  'engine-speed-held': '2500',
  'outside-air-start': '18',
  'outside-air-end': '18',
  ...Object.fromEntries(
    [0, 3, 6, 9, 12, 15, 18, 21, 24, 27, 30].map((minute, i) => [
      `t1.${i + 1}-${minute}.coolant-out`,
      (98 - 5 * Math.exp(-minute / 5)).toFixed(1),
    ]),
  ),
};

describe('a written card', () => {
  it('keeps each box with who wrote it and when; the same again makes no entry', async () => {
    const app = await appWithOuzel();
    const { kept } = await begin(app, { 't1.1-0.coolant-out': '93', 't1.2-3.coolant-out': '' });
    expect(kept?.number).toBe(1);
    const url = `/api/books/${app.book}/written/1`;
    const put = (boxes: Record<string, string>, who?: string) =>
      app.ask({ method: 'PUT', url, payload: { boxes, ...(who ? { who } : {}) } });
    const second = begun.parse((await put({ 't1.2-3.coolant-out': '95' }, 'Ada')).json());
    expect(second.lastEntry).toBeGreaterThan(kept?.lastEntry ?? Number.POSITIVE_INFINITY);
    expect(begun.parse((await put({ 't1.2-3.coolant-out': '95' })).json()).lastEntry).toBe(second.lastEntry);
    const whole = (await app.ask({ url })).json();
    expect(whole.boxes).toMatchObject({
      't1.1-0.coolant-out': { text: '93', who: 'Ines' },
      't1.2-3.coolant-out': { text: '95', who: 'Ada' },
    });
    expect(whole.card).toMatchObject({ id: 'ground-cooling-fan-hold', format: 'proveout-card-1' });
    const list = (await app.ask({ url: `/api/books/${app.book}/written` })).json();
    expect(list.written).toMatchObject([{ number: 1, test: 'ground-cooling-fan-hold', filled: 2 }]);
  });

  it('is taken back entry by entry, and put away', async () => {
    const app = await appWithOuzel();
    await begin(app, { 'fuel-left': '60' });
    const url = `/api/books/${app.book}/written/1`;
    const last = begun.parse((await app.ask({ method: 'PUT', url, payload: { boxes: { 'fuel-left': '16' } } })).json());
    const undone = await app.ask({
      method: 'POST',
      url: `/api/books/${app.book}/journal/${last.lastEntry}/undo`,
      payload: {},
    });
    expect(undone.statusCode).toBeLessThan(300);
    expect((await app.ask({ url })).json().boxes['fuel-left'].text).toBe('60');
    expect((await app.ask({ method: 'DELETE', url })).statusCode).toBe(204);
    expect((await app.ask({ url })).statusCode).toBe(404);
    expect((await verifyBook(app.desk, app.book)).broken).toEqual([]);
  });

  it('has no box that the card has not, and no card that the program has not', async () => {
    const app = await appWithOuzel();
    const wrong = await begin(app, { 't9.1.coolant': '1' });
    expect(wrong.answer.statusCode).toBe(400);
    expect(wrong.answer.json().problems[0]).toMatchObject({ code: 'bad-request', where: { field: 't9.1.coolant' } });
    expect((await begin(app, {}, 'no-such-test')).answer.statusCode).toBe(404);
    const document = '0'.repeat(64);
    const payload = { test: 'heat-soak', document, boxes: {} };
    expect((await app.ask({ method: 'POST', url: `/api/books/${app.book}/written`, payload })).statusCode).toBe(404);
  });

  it('reduces like a log, with the card, its revision and its sheets as the source', async () => {
    const app = await appWithOuzel();
    await begin(app, HOLD);
    const url = `/api/books/${app.book}/written/1/results`;
    const answer = await app.ask({ method: 'POST', url, payload: { kind: 'cooling-ground' } });
    expect(answer.statusCode, answer.body).toBe(200);
    const { stored } = answer.json();
    expect(stored).toHaveLength(1);
    expect(stored[0]).toMatchObject({
      kind: 'cooling-ground',
      tests: ['ground-cooling-fan-hold'],
      input: { card: { number: 1, title: 'Long hold with ground fan', revision: 'rev 1' } },
      result: { status: 'reduced' },
    });
    expect(stored[0].input.card.sheets.length).toBeGreaterThan(0);
    const refused = await app.ask({ method: 'POST', url, payload: { kind: 'airspeed' } });
    expect(refused.json().problems[0].code).toBe('bad-points');
  });

  it('that cannot be reduced is a page like any other, under the policy of pages', async () => {
    const app = await appWithOuzel();
    await begin(app, { 't1.1-0.coolant-out': 'ninety' });
    const answer = await app.ask({
      method: 'POST',
      url: `/books/${app.book}/written/1`,
      headers: { 'content-type': 'application/x-www-form-urlencoded' },
      payload: 'deed=reduce:cooling-ground&box.t1.1-0.coolant-out=ninety',
    });
    expect(answer.statusCode).toBe(422);
    expect(answer.headers['content-security-policy']).toContain("default-src 'self'");
    expect(answer.body).toMatch(/“ninety”[\s\S]*is not a number/);
  });

  it('is the card as it was printed, also after the airplane changed', { timeout: 120_000 }, async () => {
    const app = await appWithOuzel();
    const payload = { selection: { kind: 'card', id: 'heat-soak' }, paper: 'a5' };
    await app.ask({ method: 'POST', url: `/api/books/${app.book}/cards`, payload });
    const page = await app.ask({ url: `/books/${app.book}/written/new?test=heat-soak` });
    expect(page.body).toMatch(/printed \d+ \w+ \d+, a5/);
    expect(page.body).not.toContain('not printed from this book');
    const { kept } = await begin(app, { 't1.1-plain-stop.peak-coolant': '104' }, 'heat-soak');
    const whole = (await app.ask({ url: `/api/books/${app.book}/written/${kept?.number}` })).json();
    expect(whole.paper).toBe('a5');
    expect((await verifyBook(app.desk, app.book)).broken).toEqual([]);
  });
});
