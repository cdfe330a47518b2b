/** A revision compared with the one before it: what changed, and what the change touches. */
import * as z from 'zod';
import type { Touched } from '../../analysis/program/index.ts';
import { statedInWords } from '../forms/airplane-facts.ts';
import { labelOf } from '../forms/airplane-words.ts';
import { bookPath, frameOf, framePart } from '../parts/frame.view.ts';
import { isObject } from '../words/json-path.ts';
import { momentInWords } from '../words/time.ts';
import type { KeptRevision, PageContext } from './kept.ts';
import { resultPath } from './results.view.ts';
import { testPath } from './test.view.ts';

const link = z.strictObject({ text: z.string(), href: z.string(), because: z.string() });

export const airplaneRevisionView = z.strictObject({
  frame: framePart,
  about: z.string(),
  changes: z.array(z.strictObject({ path: z.string(), label: z.string(), before: z.string(), after: z.string() })),
  added: z.array(link),
  removed: z.array(link),
  cards: z.array(
    z.strictObject({ text: z.string(), href: z.string(), lost: z.array(z.string()), gained: z.array(z.string()) }),
  ),
  repeat: z.array(link),
  stale: z.array(link),
  isFirst: z.boolean(),
  download: z.string(),
});
export type AirplaneRevisionView = z.infer<typeof airplaneRevisionView>;

/** A revision beside the one before; `touched` is null for the first, which has nothing before it. */
export function airplaneRevisionPage(
  revision: KeptRevision,
  touched: Touched | null,
  { book, zone }: PageContext,
): AirplaneRevisionView {
  const moment = momentInWords(revision.at, zone);
  const test = (one: { test: string; title: string; because: string }) => ({
    text: one.title,
    href: testPath(book.id, one.test),
    because: one.because,
  });
  return {
    frame: frameOf(`Revision ${revision.number}`, {
      question: 'What changed, and what does the change touch?',
      book,
      way: 'airplane',
      crumbs: [
        { text: 'Airplane', href: bookPath(book.id, '/airplane') },
        { text: 'Revisions', href: bookPath(book.id, '/airplane#revisions') },
      ],
    }),
    about: [`${moment.local} (${moment.utc})`, revision.who, revision.why].filter(Boolean).join(' · '),
    changes: (touched?.changes ?? []).map(({ path, before, after }) => ({
      path,
      label: labelOf(path),
      before: valueInWords(before),
      after: valueInWords(after),
    })),
    added: (touched?.added ?? []).map(test),
    removed: (touched?.removed ?? []).map(test),
    cards: (touched?.cards ?? []).map((one) => ({
      text: one.title,
      href: testPath(book.id, one.test),
      lost: one.lost,
      gained: one.gained,
    })),
    repeat: (touched?.repeat ?? []).map(test),
    stale: (touched?.stale ?? []).map(({ id, because }) => ({
      text: `Result ${id}`,
      href: resultPath(book.id, Number(id)),
      because,
    })),
    isFirst: touched === null,
    download: bookPath(book.id, `/airplane/airplane.json?revision=${revision.number}`),
  };
}

function valueInWords(value: unknown): string {
  if (value === undefined) return 'not stated';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (isObject(value) && 'value' in value) {
    const { text, basis } = statedInWords(value);
    return basis === '' ? text : `${text} (${basis})`;
  }
  if (Array.isArray(value)) return value.length === 0 ? 'none' : value.map(valueInWords).join(', ');
  return isObject(value)
    ? Object.entries(value)
        .map(([key, inner]) => `${key} ${valueInWords(inner)}`)
        .join(', ')
    : String(value);
}
