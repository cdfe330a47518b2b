/** Cards of a book: the preview is a sheet on which nothing runs, a print is a PDF and stands in the journal. */
import { describe, expect, it } from 'vitest';
import * as z from 'zod';
import { appWithOuzel } from '../app-for-tests.ts';

const CARD = { selection: { kind: 'card', id: 'open-inspection' }, paper: 'a5' };

describe('cards', () => {
  it('are shown under a policy of their own', async () => {
    const { ask, book } = await appWithOuzel();
    const answer = await ask({ method: 'POST', url: `/api/books/${book}/cards/preview`, payload: CARD });
    expect(answer.headers['content-type']).toBe('text/html; charset=utf-8');
    expect(answer.headers['content-security-policy']).toContain("default-src 'none'");
    expect(answer.body).toContain('Open inspection');
  });

  it('are printed at once, and noted with the revision', { timeout: 120_000 }, async () => {
    const { ask, book } = await appWithOuzel();
    const answer = await ask({ method: 'POST', url: `/api/books/${book}/cards`, payload: CARD });
    expect(answer.headers['content-type']).toBe('application/pdf');
    expect(answer.rawPayload.subarray(0, 5).toString()).toBe('%PDF-');
    expect((await ask({ url: `/api/books/${book}` })).json()).toMatchObject({
      printed: [{ cards: ['open-inspection'], paper: 'a5', revision: 1 }],
      testStatus: expect.arrayContaining([expect.objectContaining({ test: 'open-inspection', status: 'briefed' })]),
    });
  });

  it('are printed as a job, whose PDF is fetched afterwards', { timeout: 120_000 }, async () => {
    const { ask, book, desk } = await appWithOuzel();
    const payload = { deed: 'print', ...CARD };
    const started = await ask({ method: 'POST', url: `/api/books/${book}/jobs`, payload });
    const { id } = z.object({ id: z.string() }).parse(started.json());
    await ask({ url: `/api/jobs/${id}/events` });
    const { print } = z.object({ print: z.string() }).parse(desk.jobs.find(id).outcome);
    const pdf = await ask({ url: `/api/books/${book}/prints/${print}` });
    expect(pdf.headers['content-type']).toBe('application/pdf');
    expect(pdf.rawPayload.subarray(0, 5).toString()).toBe('%PDF-');
    expect((await ask({ url: `/api/books/${book}/prints/..%2fbook` })).statusCode).toBe(404);
  });

  it('that are not in the program are not found', async () => {
    const { ask, book } = await appWithOuzel();
    const payload = { ...CARD, selection: { kind: 'card', id: 'no-such-card' } };
    expect((await ask({ method: 'POST', url: `/api/books/${book}/cards`, payload })).statusCode).toBe(404);
    const paper = { ...CARD, paper: 'a3' };
    expect((await ask({ method: 'POST', url: `/api/books/${book}/cards`, payload: paper })).statusCode).toBe(400);
  });
});
