/** The state that follows from the journal: what each kind of entry changes. Nothing else writes the state tables. */
import type { Database, Value } from './database.ts';
import { PLAN_TABLES, planChangeBy } from './derive-plan.ts';
import type { Entry, Happening } from './entry.ts';
import { isPlanHappening, type PlanHappening } from './plan-entries.ts';

/** Tables of the state, in an order in which each names only those before it. */
export const STATE_TABLES = [
  'book',
  'revision',
  'log',
  'result',
  'mark',
  'printed',
  'squawk',
  'hours',
  'written',
  'alignment',
  ...PLAN_TABLES,
];

/**
 * Apply an entry to the state, inside the transaction that appended it.
 * @param database the book's database
 * @param entry the entry, already in the journal
 */
export function derive(database: Database, entry: Entry): void {
  const { seq, happening } = entry;
  database.run(...(isPlanHappening(happening) ? planChangeBy(seq, happening) : changeBy(seq, happening)));
}

function changeBy(seq: number, happening: Exclude<Happening, PlanHappening>): [sql: string, values: Value[]] {
  switch (happening.kind) {
    case 'book-created':
      return ['INSERT INTO book (uid, demo, entry) VALUES (?, ?, ?)', [happening.uid, happening.demo ? 1 : 0, seq]];
    case 'airplane-saved':
      return [
        `INSERT INTO revision (number, document, undoes, entry)
         VALUES ((SELECT coalesce(max(number), 0) + 1 FROM revision), ?, ?, ?)`,
        [happening.document, happening.undoes ?? null, seq],
      ];
    case 'log-received':
      return [
        'INSERT INTO log (sha256, name, given_name, size, entry) VALUES (?, ?, ?, ?, ?)',
        [happening.log, happening.name, happening.givenName, happening.size, seq],
      ];
    case 'map-confirmed':
      return [
        'UPDATE log SET layout = ?, map = ?, mapped = ? WHERE sha256 = ?',
        [happening.layout, happening.map === null ? null : JSON.stringify(happening.map), seq, happening.log],
      ];
    case 'log-aligned':
      return [
        `INSERT INTO alignment (log, first, seconds, entry) VALUES (?, ?, ?, ?)
         ON CONFLICT (log, first) DO UPDATE SET seconds = excluded.seconds, entry = excluded.entry`,
        [happening.log, happening.first, happening.seconds, seq],
      ];
    case 'result-reduced':
      return [
        'INSERT INTO result (number, reduction, document, input, reads, entry) VALUES (?, ?, ?, ?, ?, ?)',
        [
          happening.number,
          happening.reduction,
          happening.document,
          JSON.stringify(happening.input),
          JSON.stringify(happening.reads),
          seq,
        ],
      ];
    case 'result-decided':
      return [
        'UPDATE result SET decision = ?, note = ?, decided = ? WHERE number = ?',
        [happening.decision, happening.note, seq, happening.number],
      ];
    case 'test-marked':
      return [
        `INSERT INTO mark (test, mark, note, entry) VALUES (?, ?, ?, ?)
         ON CONFLICT (test) DO UPDATE SET mark = excluded.mark, note = excluded.note, entry = excluded.entry`,
        [happening.test, happening.mark, happening.note, seq],
      ];
    case 'cards-printed':
      return [
        'INSERT INTO printed (entry, cards, paper, revision, documents) VALUES (?, ?, ?, ?, ?)',
        [
          seq,
          JSON.stringify(happening.cards),
          happening.paper,
          happening.revision,
          JSON.stringify(happening.documents ?? []),
        ],
      ];
    case 'readings-written':
      return [
        `INSERT INTO written (number, test, document, paper, boxes, changed, entry) VALUES (?, ?, ?, ?, ?, ?, ?)
         ON CONFLICT (number) DO UPDATE SET boxes = json_patch(boxes, excluded.boxes), changed = excluded.changed`,
        [
          happening.number,
          happening.test,
          happening.document,
          happening.paper,
          JSON.stringify(happening.boxes),
          seq,
          seq,
        ],
      ];
    case 'squawk-opened':
      return ['INSERT INTO squawk (number, text, entry) VALUES (?, ?, ?)', [happening.number, happening.text, seq]];
    case 'squawk-settled':
      return [
        'UPDATE squawk SET open = ?, how = ?, settled = ? WHERE number = ?',
        [happening.open ? 1 : 0, happening.how, seq, happening.number],
      ];
    case 'hours-logged':
      return [
        `INSERT INTO hours (number, date, outing, flight_seconds, engine_seconds, landings, note, entry)
         VALUES (?, ?, ?, ?, ?, ?, ?, ?)`,
        [
          happening.number,
          happening.date,
          happening.outing,
          happening.flightSeconds,
          happening.engineSeconds,
          happening.landings,
          happening.note,
          seq,
        ],
      ];
    case 'put-away':
      return shelve(happening.subject, 1);
    case 'brought-back':
      return shelve(happening.subject, 0);
  }
}

/** Things that can be put away, by the first word of their subject. */
const SHELVED: Record<string, { table: string; key: string } | undefined> = {
  log: { table: 'log', key: 'sha256' },
  result: { table: 'result', key: 'number' },
  squawk: { table: 'squawk', key: 'number' },
  hours: { table: 'hours', key: 'number' },
  written: { table: 'written', key: 'number' },
  'outing-note': { table: 'outing_note', key: 'number' },
};

function shelve(subject: string, away: 0 | 1): [sql: string, values: Value[]] {
  const [what = '', id = ''] = subject.split(':');
  const place = SHELVED[what];
  if (!place) throw new Error(`nothing of the kind "${subject}" can be put away`);
  const key = place.key === 'number' ? Number(id) : id;
  return [`UPDATE ${place.table} SET away = ? WHERE ${place.key} = ?`, [away, key]];
}
