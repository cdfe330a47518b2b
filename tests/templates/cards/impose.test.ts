import fc from 'fast-check';
import { expect, test } from 'vitest';
import { PAPERS, type Paper, SHEETS } from '../../../analysis/cards/index.ts';
import { impose, pageCount } from '../../../templates/cards/impose.ts';

const paper = fc.constantFrom<Paper>(...PAPERS);
const sheets = fc.integer({ min: 1, max: 60 });

test('every side has a place of its own, and the pages are as many as counted', () => {
  fc.assert(
    fc.property(sheets, paper, fc.boolean(), (count, form, backs) => {
      const places = impose(count, form, backs);
      expect(places).toHaveLength(count * (backs ? 2 : 1));
      expect(new Set(places.map((place) => `${place.row}.${place.column}`)).size).toBe(places.length);
      expect(Math.max(...places.map((place) => place.row))).toBe(pageCount(count, form, backs));
    }),
  );
});

test('two-up: the pile cut once, right part laid under the left, is in order', () => {
  fc.assert(
    fc.property(sheets, fc.constantFrom<Paper>('letter-2up', 'a4-2up'), (count, form) => {
      const places = impose(count, form, false).map((place, sheet) => ({ ...place, sheet }));
      const half = (column: number) =>
        places
          .filter((place) => place.column === column)
          .sort((a, b) => a.row - b.row)
          .map((place) => place.sheet);
      expect([...half(1), ...half(2)]).toEqual(places.map((place) => place.sheet));
    }),
  );
});

test('a back lies behind its front when the paper is turned over on its short edge', () => {
  for (const form of PAPERS) {
    const places = impose(8, form, true);
    for (let i = 0; i < places.length; i += 2) {
      const [front, back] = [places[i], places[i + 1]];
      if (!front || !back) throw new Error('a side is missing');
      expect([front.back, back.back]).toEqual([false, true]);
      expect(front.row % 2).toBe(1);
      expect(back.row).toBe(front.row + 1);
      // turned over as a book page: what was left is right
      expect(back.column).toBe(SHEETS[form].perPage === 1 ? 1 : 3 - front.column);
    }
  }
});
