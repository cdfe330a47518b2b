/** Cards with their readings written in: the card as printed, what stands in each box, who wrote it and when. */
import { type Card, cardSchema, entryFields } from '../../analysis/cards/index.ts';
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import type { Book } from './book.ts';
import * as rows from './current-state.ts';
import { understanding } from './documents.ts';
import { entriesOn } from './journal.ts';

export interface WrittenBox {
  text: string;
  at: string;
  who: string;
}

export interface WrittenCard {
  number: number;
  card: Card;
  /** hash of the card as printed */
  document: string;
  paper: string;
  /** by key; boxes taken out again are not there */
  boxes: Record<string, WrittenBox>;
  at: string;
  changedAt: string;
  /** the entry of the journal that wrote last: what an undo takes back */
  lastEntry: number;
}

/** What a list of written cards shows of each. */
export interface WrittenSummary {
  number: number;
  test: string;
  title: string;
  outing: string;
  place: string;
  revision: string;
  printed: string;
  filled: number;
  of: number;
  at: string;
  changedAt: string;
}

const cardIn = understanding((json) => cardSchema.parse(json));

/** A card as it was printed. */
export function keptCard(book: Book, document: string): Card {
  return cardIn(book.database, document);
}

/** All cards that were written into, but those put away, in the order begun. */
export function writtenSummaries(book: Book): WrittenSummary[] {
  return rows
    .writtenCards(book.database)
    .filter((row) => !row.away)
    .map((row) => {
      const card = keptCard(book, row.document);
      return {
        number: row.number,
        test: row.test,
        title: card.title,
        outing: card.identity.outing,
        place: card.identity.place,
        revision: card.identity.revision,
        printed: card.identity.printed,
        filled: Object.values(row.boxes).filter((text) => text !== '').length,
        of: entryFields(card).order.length,
        at: row.at,
        changedAt: row.changed_at,
      };
    });
}

/**
 * One card with what was written into it.
 * @throws InputProblem `not-found`
 */
export function writtenCard(book: Book, number: number): WrittenCard {
  const row = rows.writtenCards(book.database).find((one) => one.number === number && !one.away);
  if (!row) throw new InputProblem([problem('not-found', `There is no written card ${number} in this book.`)]);
  const boxes: Record<string, WrittenBox> = {};
  const entries = entriesOn(book.database, `written:${number}`);
  for (const { happening, at, who } of entries) {
    if (happening.kind !== 'readings-written') continue;
    for (const [key, text] of Object.entries(happening.boxes)) {
      if (text === '') delete boxes[key];
      else boxes[key] = { text, at, who };
    }
  }
  return {
    number,
    card: keptCard(book, row.document),
    document: row.document,
    paper: row.paper,
    boxes,
    at: row.at,
    changedAt: row.changed_at,
    lastEntry: entries.at(-1)?.seq ?? row.changed,
  };
}
