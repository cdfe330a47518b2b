/** The whole plan of a book: the preview is a sheet on which nothing runs, a print is a PDF and stands in the journal. */
import { describe, expect, it } from 'vitest';
import * as z from 'zod';
import { appWithOuzel } from '../app-for-tests.ts';

describe('the whole plan', () => {
  it('is shown under a policy of its own, by the API and by its page', async () => {
    const { ask, book } = await appWithOuzel();
    const answers = [
      await ask({ method: 'POST', url: `/api/books/${book}/plan/preview`, payload: { paper: 'a4' } }),
      await ask({ url: `/books/${book}/program/plan/preview?paper=a4` }),
    ];
    for (const answer of answers) {
      expect(answer.headers['content-security-policy']).toContain("default-src 'none'");
      expect(answer.body).toContain('Flight-test plan');
      expect(answer.body).toContain('size:a4');
    }
    const page = await ask({ url: `/books/${book}/program/plan` });
    expect(page.body).toContain('/program/plan/preview?paper&#x3D;letter');
    expect((await ask({ url: `/books/${book}/program` })).body).toContain('href="program/plan"');
  });

  it('is printed at once and as a job, and noted without calling a card printed', { timeout: 120_000 }, async () => {
    const { ask, book, desk } = await appWithOuzel();
    const answer = await ask({ method: 'POST', url: `/api/books/${book}/plan`, payload: { paper: 'letter' } });
    expect(answer.headers['content-type']).toBe('application/pdf');
    expect(answer.rawPayload.subarray(0, 5).toString()).toBe('%PDF-');
    expect((await ask({ url: `/api/books/${book}` })).json()).toMatchObject({
      printed: [{ cards: [], paper: 'letter', revision: 1 }],
      testStatus: expect.arrayContaining([expect.objectContaining({ test: 'open-inspection', status: 'planned' })]),
    });
    expect((await ask({ url: `/books/${book}/record` })).body).toContain('The whole plan was printed on letter');
    const payload = { deed: 'print-plan', paper: 'a4' };
    const started = await ask({ method: 'POST', url: `/api/books/${book}/jobs`, payload });
    const { id } = z.object({ id: z.string() }).parse(started.json());
    await ask({ url: `/api/jobs/${id}/events` });
    const { print, pages } = z.object({ print: z.string(), pages: z.int() }).parse(desk.jobs.find(id).outcome);
    expect(pages).toBeGreaterThan(20);
    const pdf = await ask({ url: `/api/books/${book}/prints/${print}` });
    expect(pdf.rawPayload.subarray(0, 5).toString()).toBe('%PDF-');
  });

  it('on a paper that is not there is refused', async () => {
    const { ask, book } = await appWithOuzel();
    expect((await ask({ method: 'POST', url: `/api/books/${book}/plan`, payload: { paper: 'a3' } })).statusCode).toBe(
      400,
    );
  });
});
