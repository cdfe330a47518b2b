/** The journal: append-only, chained, in one transaction with the state it changes. */
import { describe, expect, it } from 'vitest';
import { openSquawk } from '../../../server/actions/open-squawk.ts';
import { saveAirplane } from '../../../server/actions/save-airplane.ts';
import { settleSquawk } from '../../../server/actions/settle-squawk.ts';
import { undo } from '../../../server/actions/undo.ts';
import { verifyBook } from '../../../server/actions/verify-book.ts';
import { breaksIn, journalRows } from '../../../server/book/journal.ts';
import { airplaneOf, storedSquawks } from '../../../server/book/read-state.ts';
import { changed, deskWithOuzel, OUZEL } from '../desk-for-tests.ts';

const CAUTION = 'limits.coolant.caution.value';

describe('the journal', () => {
  it('chains each entry to the one before and keeps who, when and why', () => {
    const { desk, book } = deskWithOuzel();
    openSquawk(desk, book, 'left brake drags', { who: 'Ines Corbeau' });
    const rows = journalRows(desk.shelf.open(book).database);
    expect(rows.map((row) => row.subject)).toEqual(['book', 'airplane', 'squawk:1']);
    expect(rows[0]?.prev).toBe('0'.repeat(64));
    expect(rows.slice(1).map((row) => row.prev)).toEqual(rows.slice(0, -1).map((row) => row.hash));
    expect(rows.at(-1)).toMatchObject({
      who: 'Ines Corbeau',
      at: expect.stringMatching(/^2031-05-04T06:00:\d\d\.000Z$/),
    });
    expect(breaksIn(rows)).toEqual([]);
  });

  it('refuses to be changed or shortened', () => {
    const { desk, book } = deskWithOuzel();
    const { database } = desk.shelf.open(book);
    expect(() => database.run('UPDATE journal SET who = ? WHERE seq = 1', ['another'])).toThrow('append-only');
    expect(() => database.run('DELETE FROM journal WHERE seq = 2')).toThrow('append-only');
  });

  it.each([
    ['an entry changed', "UPDATE journal SET data = replace(data, 'brake', 'wheel')", 'entry 3 was changed'],
    ['an entry taken out', 'DELETE FROM journal WHERE seq = 3', 'entry 3 is missing'],
    [
      'a document changed',
      "UPDATE document SET json = replace(json, 'Ouzel', 'Snipe')",
      'was changed after it was kept',
    ],
    ['the state changed', 'UPDATE squawk SET open = 0', 'is not what the journal says'],
  ])('shows %s', async (_, sql, says) => {
    const { desk, book } = deskWithOuzel();
    openSquawk(desk, book, 'left brake drags');
    openSquawk(desk, book, 'canopy seal');
    const { database } = desk.shelf.open(book);
    expect((await verifyBook(desk, book)).broken).toEqual([]);
    database.exec('DROP TRIGGER journal_keeps; DROP TRIGGER journal_stays; PRAGMA foreign_keys = OFF');
    database.exec(sql);
    expect((await verifyBook(desk, book)).broken.join('\n')).toContain(says);
  });

  it('keeps nothing of a deed that fails half-way', () => {
    const { desk, book } = deskWithOuzel();
    const held = desk.shelf.open(book);
    const before = journalRows(held.database).length;
    const fail = () =>
      held.database.transaction(() => {
        held.record({ kind: 'squawk-opened', number: 1, text: 'left brake drags' });
        throw new Error('stopped');
      });
    expect(fail).toThrow('stopped');
    expect(journalRows(held.database)).toHaveLength(before);
    expect(storedSquawks(held)).toEqual([]);
  });
});

describe('undo', () => {
  it('is a new entry and a new revision with what stood before', () => {
    const { desk, book } = deskWithOuzel();
    const saved = saveAirplane(desk, book, changed(OUZEL, CAUTION, 106));
    expect(saved).toMatchObject({ saved: true, revision: 2, changed: true });
    const entry = undo(desk, book, 3, { who: 'Ines Corbeau' });
    const airplane = airplaneOf(desk.shelf.open(book));
    expect(entry).toMatchObject({ seq: 4, why: 'Undo of entry 3', happening: { undoes: 3 } });
    expect(airplane.revision).toBe(3);
    expect(airplane.file).toEqual(OUZEL);
    undo(desk, book, 4);
    expect(airplaneOf(desk.shelf.open(book)).file).toEqual(changed(OUZEL, CAUTION, 106));
  });

  it('sets a squawk back and puts one away', () => {
    const { desk, book } = deskWithOuzel();
    const number = openSquawk(desk, book, 'left brake drags');
    settleSquawk(desk, book, number, { open: false, how: 'new seal' });
    const squawks = () => storedSquawks(desk.shelf.open(book));
    undo(desk, book, 4);
    expect(squawks()).toMatchObject([{ open: true, how: '' }]);
    undo(desk, book, 3);
    expect(squawks()).toEqual([]);
    undo(desk, book, 6);
    expect(squawks()).toMatchObject([{ number, text: 'left brake drags' }]);
  });

  it('refuses what something later builds on, what has nothing before it, and what is not there', () => {
    const { desk, book } = deskWithOuzel();
    saveAirplane(desk, book, changed(OUZEL, CAUTION, 106));
    saveAirplane(desk, book, changed(OUZEL, CAUTION, 107));
    expect(() => undo(desk, book, 3)).toThrow('entry 4 came after it');
    expect(() => undo(desk, book, 1)).toThrow('stays in the journal');
    expect(() => undo(desk, book, 99)).toThrow('no entry 99');
  });
});

describe('a description that does not fit', () => {
  it('is refused field by field, and what was stored stays', () => {
    const { desk, book } = deskWithOuzel();
    const answer = saveAirplane(desk, book, changed(OUZEL, 'limits.coolant.caution.unit', 'kg'));
    expect(answer).toMatchObject({ saved: false, problems: [{ code: 'bad-configuration' }] });
    expect(airplaneOf(desk.shelf.open(book))).toMatchObject({ revision: 1, file: OUZEL });
  });

  it('saved again unchanged makes no revision', () => {
    const { desk, book } = deskWithOuzel();
    expect(saveAirplane(desk, book, OUZEL)).toMatchObject({ saved: true, revision: 1, changed: false });
  });
});
