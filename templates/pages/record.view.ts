/** The record: everything that happened to a book, newest first, and what of it can be undone. */
import * as z from 'zod';
import { reductionOf } from '../../analysis/reductions/index.ts';
import { bookPath, frameOf, framePart } from '../parts/frame.view.ts';
import { count } from '../words/list.ts';
import { momentInWords } from '../words/time.ts';
import type { PageContext } from './kept.ts';

export const recordView = z.strictObject({
  frame: framePart,
  entries: z.array(
    z.strictObject({
      seq: z.int(),
      when: z.string(),
      utc: z.string(),
      who: z.string(),
      what: z.string(),
      why: z.string(),
      undo: z.string(),
    }),
  ),
  older: z.string(),
  archive: z.string(),
  jobs: z.string(),
});
export type RecordView = z.infer<typeof recordView>;

/** One entry of the journal, with those parts of it that are told. */
export interface KeptEntry {
  seq: number;
  at: string;
  who: string;
  why: string;
  subject: string;
  happening: {
    kind: string;
    undoes?: number | undefined;
    number?: number;
    name?: string;
    reduction?: string;
    decision?: string;
    mark?: string;
    test?: string;
    text?: string;
    open?: boolean;
    cards?: readonly string[];
    boxes?: Readonly<Record<string, string>>;
    paper?: string;
    outing?: string;
    subject?: string;
    log?: string;
    first?: string;
    note?: string;
    because?: string;
    words?: string;
    what?: string;
    out?: boolean;
    document?: string | null;
    outings?: readonly unknown[];
  };
}

/** Entries shown at once. */
export const RECORD_PAGE = 60;

/** The Record page. `last` says of a subject which entry is its last: only that can be undone. */
export function recordPage(
  entries: readonly KeptEntry[],
  names: ReadonlyMap<string, string>,
  { book, zone }: PageContext,
  done = '',
): RecordView {
  const seen = new Set<string>();
  return {
    frame: frameOf('The record', {
      question: 'What happened, when, by whom, and why?',
      book,
      way: 'home',
      crumbs: [{ text: 'Home', href: bookPath(book.id) }],
      done,
      modules: ['page-verify'],
    }),
    entries: entries.map((entry) => {
      const isLast = !seen.has(entry.subject);
      seen.add(entry.subject);
      const moment = momentInWords(entry.at, zone);
      const undoable = isLast && !['book-created', 'cards-printed', 'outings-printed'].includes(entry.happening.kind);
      return {
        seq: entry.seq,
        when: moment.local,
        utc: moment.utc,
        who: entry.who,
        what: happeningInWords(entry.happening, names),
        why: [entry.why, entry.happening.note].filter(Boolean).join(' · '),
        undo: undoable ? bookPath(book.id, `/record/${entry.seq}/undo`) : '',
      };
    }),
    older: entries.length < RECORD_PAGE ? '' : bookPath(book.id, `/record?before=${entries.at(-1)?.seq ?? 1}`),
    archive: `/api${bookPath(book.id, '/archive')}`,
    jobs: `/api${bookPath(book.id, '/jobs')}`,
  };
}

const NOTED: Record<string, string> = { done: 'flown or done', 'no-go': 'a no-go', 'day-lost': 'the day was lost' };

function happeningInWords(happening: KeptEntry['happening'], names: ReadonlyMap<string, string>): string {
  const { kind, number, undoes } = happening;
  const undo = undoes === undefined ? '' : `Undo of entry ${undoes}: `;
  const title =
    happening.reduction === undefined ? '' : (reductionOf(happening.reduction)?.title ?? happening.reduction);
  const log = names.get(happening.log ?? '') ?? 'a log';
  const words: Record<string, string> = {
    'book-created': 'The book was opened',
    'airplane-saved': 'The airplane’s description was saved',
    'log-received': `${happening.name ?? 'A log'} was received`,
    'map-confirmed': `The channel table of ${log} was confirmed`,
    'log-aligned': `${log} was put on the clock of ${names.get(happening.first ?? '') ?? 'another log'} by hand`,
    'result-reduced': `Result ${number}: ${title}`,
    'result-decided': `Result ${number} was marked ${happening.decision === 'repeat' ? 'to be repeated' : happening.decision}`,
    'test-marked': `“${names.get(happening.test ?? '') ?? happening.test}” was marked ${happening.mark}`,
    'cards-printed':
      happening.cards?.length === 0
        ? `The whole plan was printed on ${happening.paper}`
        : `${count(happening.cards?.length ?? 0, 'card')} printed on ${happening.paper}`,
    'readings-written': `${count(Object.keys(happening.boxes ?? {}).length, 'reading')} written into the card of “${names.get(happening.test ?? '') ?? happening.test}”`,
    'squawk-opened': `Squawk ${number}: ${happening.text ?? ''}`,
    'squawk-settled': `Squawk ${number} was ${happening.open ? 'opened again' : 'settled'}`,
    'hours-logged': `Hours written down${happening.outing ? ` for ${happening.outing}` : ''}`,
    'program-arranged': `The program was arranged. ${happening.words ?? ''}`,
    'outing-noted': `“${happening.outing ?? ''}” was noted: ${NOTED[happening.what ?? ''] ?? happening.what}`,
    'outings-printed': `${count(happening.outings?.length ?? 0, 'outing')} lie on paper whole`,
    'own-test-saved': `A test of your own, “${names.get(happening.test ?? '') ?? happening.test}”, was ${happening.document === null ? 'withdrawn' : 'saved'}`,
    'test-left-out': `“${names.get(happening.test ?? '') ?? happening.test}” was ${happening.out ? 'left out' : 'taken in again'}`,
    'put-away': `${thingInWords(happening.subject, names)} was put away`,
    'brought-back': `${thingInWords(happening.subject, names)} was brought back`,
  };
  return `${undo}${words[kind] ?? kind}`;
}

function thingInWords(subject = '', names: ReadonlyMap<string, string>): string {
  const [what = '', id = ''] = subject.split(':');
  if (what === 'outing-note') return 'The note of an outing';
  return what === 'log' ? (names.get(id) ?? 'A log') : `${what.charAt(0).toUpperCase()}${what.slice(1)} ${id}`;
}
