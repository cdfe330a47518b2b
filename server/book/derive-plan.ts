/** The state that follows from entries about the program. */
import type { Value } from './database.ts';
import type { PlanHappening } from './plan-entries.ts';

/** Tables of that state. */
export const PLAN_TABLES = ['arrangement', 'outing_note', 'outing_paper', 'own_test', 'left_out'];

/** What an entry changes. */
export function planChangeBy(seq: number, happening: PlanHappening): [sql: string, values: Value[]] {
  switch (happening.kind) {
    case 'program-arranged':
      return [
        'INSERT INTO arrangement (entry, document, because, words, again, undoes) VALUES (?, ?, ?, ?, ?, ?)',
        [
          seq,
          happening.document,
          happening.because,
          happening.words,
          JSON.stringify(happening.again),
          happening.undoes ?? null,
        ],
      ];
    case 'outing-noted':
      return [
        'INSERT INTO outing_note (number, what, outing, parts, note, entry) VALUES (?, ?, ?, ?, ?, ?)',
        [happening.number, happening.what, happening.outing, JSON.stringify(happening.parts), happening.note, seq],
      ];
    case 'outings-printed':
      return ['INSERT INTO outing_paper (entry, outings) VALUES (?, ?)', [seq, JSON.stringify(happening.outings)]];
    case 'own-test-saved':
      return [
        `INSERT INTO own_test (test, document, entry) VALUES (?, ?, ?)
         ON CONFLICT (test) DO UPDATE SET document = excluded.document, entry = excluded.entry`,
        [happening.test, happening.document, seq],
      ];
    case 'test-left-out':
      return [
        `INSERT INTO left_out (test, out, reason, instead, entry) VALUES (?, ?, ?, ?, ?)
         ON CONFLICT (test) DO UPDATE SET out = excluded.out, reason = excluded.reason, instead = excluded.instead,
           entry = excluded.entry`,
        [happening.test, happening.out ? 1 : 0, happening.reason, happening.instead, seq],
      ];
  }
}
