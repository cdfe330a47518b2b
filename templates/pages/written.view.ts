/** The readings of a card, typed in its own layout: what was printed, one field for each box, reduced like a log. */
import * as z from 'zod';
import { allFields, type Card, entryFields, RETURN } from '../../analysis/cards/index.ts';
import type { Reduction } from '../../analysis/reductions/index.ts';
import { type FieldProblem, shapedFields, type Typed } from '../forms/airplane-form.ts';
import { isPlain } from '../forms/points-table.ts';
import { schemaFields } from '../forms/schema-shape.ts';
import { fieldPart, textField } from '../parts/field.view.ts';
import { bookPath, frameOf, framePart } from '../parts/frame.view.ts';
import { type ProblemPart, problemsPart } from '../parts/remarks.view.ts';
import { momentInWords } from '../words/time.ts';
import type { PageContext } from './kept.ts';
import { boxField, entryTableOf, entryTableView, fieldOfBox } from './written-fields.ts';

export const writtenView = z.strictObject({
  frame: framePart,
  problems: problemsPart,
  /** whose paper it is: outing, place, revision, day and form */
  identity: z.string(),
  unprinted: z.boolean(),
  others: z.array(z.strictObject({ text: z.string(), href: z.string() })),
  aim: z.string(),
  action: z.string(),
  /** for the page's module: where to begin, where to go on, and what with */
  api: z.string(),
  page: z.string(),
  number: z.string(),
  test: z.string(),
  document: z.string(),
  expectNote: z.string(),
  strip: z.array(boxField),
  tables: z.array(entryTableView),
  boxes: z.array(boxField),
  filled: z.string(),
  savedAt: z.string(),
  canUndo: z.boolean(),
  flown: z.string(),
  reductions: z.array(
    z.strictObject({
      kind: z.string(),
      title: z.string(),
      method: z.string(),
      options: z.array(fieldPart),
      results: z.array(z.strictObject({ text: z.string(), href: z.string() })),
    }),
  ),
  remarks: z.array(z.string()),
  /** a return sheet's way into the record */
  filing: z.array(fieldPart),
  by: z.array(fieldPart),
});
export type WrittenView = z.infer<typeof writtenView>;

/** A card in hand, with what was written into it so far. */
export interface CardInHandView {
  card: Card;
  paper: string;
  /** its number in the book; null before the first save */
  number: number | null;
  document: string | null;
  changedAt: string | null;
  texts: Readonly<Record<string, string>>;
  others: readonly { document: string; place: string; printed: string; revision: string }[];
  results: readonly { number: number; kind: string; status: string }[];
}

export interface TypedCard {
  typed?: Typed;
  problems?: readonly FieldProblem[];
  others?: readonly ProblemPart[];
  remarks?: readonly string[];
  done?: string;
  /** day the page is shown */
  today?: string;
}

/** Address of a written card's page. */
export function writtenPath(book: string, number: number, more = ''): string {
  return bookPath(book, `/written/${number}${more}`);
}

/** Address of the page that begins to write into the card of a test. */
export function writePath(book: string, test: string, document?: string): string {
  const query = new URLSearchParams({ test, ...(document === undefined ? {} : { card: document }) });
  return bookPath(book, `/written/new?${query}`);
}

/** The entry page of a card. */
export function writtenPage(
  hand: CardInHandView,
  reductions: readonly Reduction[],
  { typed = new Map(), problems = [], others = [], remarks = [], done = '', today = '' }: TypedCard,
  { book, units, zone }: PageContext,
): WrittenView {
  const { card, paper, number, document, texts } = hand;
  const entry = entryFields(card);
  const labels = new Map(allFields(entry).map((one) => [one.key, [one.at, one.label].filter(Boolean).join(': ')]));
  const { place, revision, printed } = card.identity;
  const filled = entry.order.filter((key) => (texts[key] ?? '') !== '').length;
  return {
    frame: frameOf(card.title, {
      question: 'What was read and written on the card?',
      book,
      way: 'outings',
      crumbs: [{ text: 'Outings', href: bookPath(book.id, '/outings') }],
      done,
      modules: ['page-written'],
    }),
    problems: {
      heading: 'Not done. What you typed is kept here',
      items: [
        ...problems.map(({ path, message }) => ({ message, where: labels.get(path) ?? '', mend: '' })),
        ...others,
      ],
    },
    identity: `${place} · ${revision} · ${RETURN.test(card.id) ? 'return sheet' : document === null ? 'not printed from this book' : `printed ${printed}, ${paper}`}`,
    unprinted: document === null && !RETURN.test(card.id),
    others: hand.others.map((one) => ({
      text: `${one.place}, ${one.revision}, printed ${one.printed}`,
      href: writePath(book.id, card.id, one.document),
    })),
    aim: card.aim,
    action: number === null ? writePath(book.id, card.id, document ?? undefined) : writtenPath(book.id, number),
    api: `/api${bookPath(book.id, '/written')}`,
    page: bookPath(book.id, '/written/'),
    number: number === null ? '' : String(number),
    test: card.id,
    document: document ?? '',
    expectNote: card.expectNote,
    strip: entry.strip.map((one) => fieldOfBox(one, texts)),
    tables: entry.tables.map((table) => entryTableOf(table, texts)),
    boxes: entry.boxes.map((one) => fieldOfBox(one, texts)),
    filled: `${filled} of ${entry.order.length} boxes filled`,
    savedAt: hand.changedAt === null ? '' : momentInWords(hand.changedAt, zone).local,
    canUndo: number !== null,
    flown: number === null ? '' : bookPath(book.id, `/cards?written=${number}`),
    reductions: reductions.map((reduction) => ({
      kind: reduction.kind,
      title: reduction.title,
      method: `/help/methods/${reduction.kind}`,
      options: shapedFields(
        cardOptions(reduction),
        `options.${reduction.kind}`,
        { instruments: { units } },
        typed,
        problems,
      ),
      results: hand.results
        .filter((one) => one.kind === reduction.kind)
        .map((one) => ({
          text: `Result ${one.number}, ${one.status}`,
          href: bookPath(book.id, `/results/${one.number}`),
        })),
    })),
    remarks: [...remarks],
    filing: RETURN.test(card.id)
      ? [textField({ name: 'date', label: 'Day', hint: 'Such as 2031-05-04.' }, typed.get('date')?.at(-1) ?? today)]
      : [],
    by: [textField({ name: 'who', label: 'Written by' }, typed.get('who')?.at(-1) ?? '')],
  };
}

/** Options of a reduction that stand as plain fields. */
export function cardOptions(reduction: Reduction) {
  return schemaFields(reduction.optionsSchema).filter((one) => isPlain(one.shape));
}
