/** Routes of books pass on what the deeds give: nothing is lost on the way out, nothing is taken unread. */
import { describe, expect, it } from 'vitest';
import * as z from 'zod';
import { openBook } from '../../../server/actions/open-book.ts';
import { programOf } from '../../../server/actions/program-of.ts';
import { appWithOuzel, fileBody } from '../app-for-tests.ts';
import { changed, OUZEL, WRENLET } from '../desk-for-tests.ts';

const plain = (value: unknown): unknown => JSON.parse(JSON.stringify(value));
const id = z.object({ id: z.string() });

describe('books', () => {
  it('are listed, made and opened whole', async () => {
    const { ask, book, desk } = await appWithOuzel();
    const made = await ask({ method: 'POST', url: '/api/books', payload: { airplane: WRENLET, who: 'Ines' } });
    expect(made.statusCode).toBe(201);
    const second = id.parse(made.json()).id;
    expect((await ask({ url: '/api/books' })).json()).toMatchObject({
      books: expect.arrayContaining([
        expect.objectContaining({ id: book, name: 'Ouzel' }),
        expect.objectContaining({ id: second, name: 'Wrenlet' }),
      ]),
    });
    expect((await ask({ url: `/api/books/${book}` })).json()).toEqual(plain(await openBook(desk, book)));
    expect((await ask({ url: '/api/health' })).json()).toEqual({ status: 'ok', books: 2 });
  });

  it('refuse a description that does not fit, field by field, and keep the stored one', async () => {
    const { ask, book } = await appWithOuzel();
    const bad = changed(OUZEL, 'limits.coolant.limit.value', 'hot');
    const url = `/api/books/${book}/airplane`;
    const answer = await ask({ method: 'PUT', url, payload: { airplane: bad } });
    expect(answer.statusCode).toBe(400);
    expect(answer.json()).toMatchObject({
      problems: [{ code: 'bad-configuration', where: { field: 'limits.coolant.limit.value' } }],
    });
    expect((await ask({ url })).json()).toEqual(OUZEL);
    expect((await ask({ method: 'POST', url: '/api/books', payload: { airplane: bad } })).statusCode).toBe(400);
    expect((await ask({ url: '/api/health' })).json()).toMatchObject({ books: 1 });
  });

  it('give each revision of the description as it was saved', async () => {
    const { ask, book } = await appWithOuzel();
    const url = `/api/books/${book}/airplane`;
    const next = changed(OUZEL, 'limits.coolant.caution.value', 106);
    const saved = await ask({ method: 'PUT', url, payload: { airplane: next, who: 'Ines', why: 'new sender' } });
    expect(saved.json()).toEqual({ revision: 2, changed: true });
    expect((await ask({ url: `${url}?revision=1` })).json()).toEqual(OUZEL);
    expect((await ask({ url })).json()).toEqual(next);
    expect((await ask({ url: `${url}?revision=3` })).statusCode).toBe(404);
    const undone = await ask({ method: 'POST', url: `/api/books/${book}/journal/3/undo`, payload: {} });
    expect(undone.json()).toMatchObject({ happening: { kind: 'airplane-saved', undoes: 3 } });
    expect((await ask({ url })).json()).toEqual(OUZEL);
  });

  it('give the program whole, for a book and for a description sent along', async () => {
    const { ask, book, desk } = await appWithOuzel();
    const program = plain(await programOf(desk, book));
    expect((await ask({ url: `/api/books/${book}/program` })).json()).toEqual(program);
    expect((await ask({ method: 'POST', url: '/api/program', payload: Object(OUZEL) })).json()).toEqual(program);
  });
});

describe('what a person writes down', () => {
  it('is kept with who and when, and shows in the state', async () => {
    const { ask, book } = await appWithOuzel();
    const post = (path: string, payload: object) => ask({ method: 'POST', url: `/api/books/${book}/${path}`, payload });
    expect((await post('squawks', { text: 'left brake drags', who: 'Ines' })).json()).toEqual({ number: 1 });
    expect((await post('squawks/1/settling', { open: false, how: 'new seal' })).statusCode).toBe(204);
    expect((await post('squawks/9/settling', { open: false, how: '' })).statusCode).toBe(404);
    const hours = { date: '2031-05-04', flightSeconds: 1800, engineSeconds: 2400, landings: 2 };
    expect((await post('hours', hours)).json()).toEqual({ number: 1 });
    const mark = await ask({
      method: 'PUT',
      url: `/api/books/${book}/tests/open-inspection/mark`,
      payload: { mark: 'accepted', note: 'all zones', who: 'Ines' },
    });
    expect(mark.statusCode).toBe(204);
    expect((await ask({ url: `/api/books/${book}` })).json()).toMatchObject({
      squawks: [{ number: 1, text: 'left brake drags', open: false, how: 'new seal', who: 'Ines' }],
      hours: { flightSeconds: 1800, engineSeconds: 2400, landings: 2 },
      testStatus: expect.arrayContaining([
        expect.objectContaining({ test: 'open-inspection', status: 'accepted', because: 'Marked accepted. all zones' }),
      ]),
    });
    const nowhere = await ask({
      method: 'PUT',
      url: `/api/books/${book}/tests/no-such-test/mark`,
      payload: { mark: 'accepted' },
    });
    expect(nowhere.statusCode).toBe(404);
  });

  it('stands in the journal, page by page, which can be checked', async () => {
    const { ask, book } = await appWithOuzel();
    for (const text of ['one', 'two', 'three']) {
      await ask({ method: 'POST', url: `/api/books/${book}/squawks`, payload: { text } });
    }
    const entries = z.object({ entries: z.array(z.object({ seq: z.number() })) });
    const page = async (query: string) =>
      entries.parse((await ask({ url: `/api/books/${book}/journal?${query}` })).json()).entries.map((one) => one.seq);
    expect(await page('count=2')).toEqual([5, 4]);
    expect(await page('count=2&before=4')).toEqual([3, 2]);
    const check = (await ask({ url: `/api/books/${book}/journal/verification` })).json();
    expect(check).toMatchObject({ entries: 5, logs: 0, broken: [] });
    const undone = await ask({ method: 'POST', url: `/api/books/${book}/journal/1/undo`, payload: {} });
    expect(undone.statusCode).toBe(409);
  });
});

describe('a book out and in', () => {
  it('comes back from its archive as another book with the same record', async () => {
    const { ask, book } = await appWithOuzel();
    await ask({ method: 'POST', url: `/api/books/${book}/logs`, ...fileBody('run.csv', 'Time,CHT\n0,80\n') });
    const archive = await ask({ url: `/api/books/${book}/archive` });
    expect(archive.headers['content-type']).toBe('application/zip');
    expect(archive.headers['content-disposition']).toBe(`attachment; filename="${book}-2031-05-04.zip"`);
    const taken = await ask({ method: 'POST', url: '/api/import', ...fileBody('book.zip', archive.rawPayload) });
    expect(taken.statusCode).toBe(201);
    const imported = z.object({ id: z.string(), entries: z.number(), logs: z.number() }).parse(taken.json());
    expect(imported).toMatchObject({ entries: 3, logs: 1 });
    const [before, after] = await Promise.all([book, imported.id].map((one) => ask({ url: `/api/books/${one}` })));
    expect({ ...Object(after?.json()), id: book }).toEqual(before?.json());
  });

  it('is refused where the file is no archive or there is none', async () => {
    const { ask } = await appWithOuzel();
    const answer = await ask({ method: 'POST', url: '/api/import', ...fileBody('book.zip', 'no zip') });
    expect(answer.json()).toMatchObject({ problems: [{ code: 'bad-archive' }] });
    const none = await ask({ method: 'POST', url: '/api/import', payload: {} });
    expect(none.statusCode).toBeGreaterThanOrEqual(400);
    expect((await ask({ url: '/api/health' })).json()).toMatchObject({ books: 1 });
  });
});
