/** The card a person has in hand: as it was printed last, or filled now where this book never printed it. */
import { type Card, outingName, RETURN, returnCard, returnSheet } from '../../analysis/cards/index.ts';
import { InputProblem, problem } from '../../analysis/remarks/index.ts';
import { printings } from '../book/current-state.ts';
import { airplaneOf } from '../book/read-state.ts';
import { keptCard } from '../book/written-cards.ts';
import type { Desk } from '../desk.ts';
import { planOf } from './book-plan.ts';
import { cardInput } from './card-input.ts';
import { previewCards } from './print-cards.ts';

export interface CardInHand {
  card: Card;
  /** hash of the card as printed; null where it is filled now */
  document: string | null;
  paper: string;
  /** other cards printed of the same test, newest first: earlier prints, other parts */
  others: { document: string; place: string; printed: string; revision: string }[];
}

/**
 * @param wanted the test, or one printed card by its hash
 * @throws InputProblem `not-found` where the program has no such test
 */
export async function cardToWrite(
  desk: Desk,
  bookId: string,
  wanted: { test: string; document?: string | undefined },
): Promise<CardInHand> {
  const book = desk.shelf.open(bookId);
  const all = printings(book.database)
    .flatMap(({ documents, paper }) =>
      documents.filter((one) => one.test === wanted.test).map((one) => ({ ...one, paper })),
    )
    .reverse();
  const seen = new Set<string>();
  const printed = all.filter(({ document }) => !seen.has(document) && seen.add(document));
  const chosen = wanted.document === undefined ? printed[0] : printed.find((one) => one.document === wanted.document);
  if (chosen) {
    const others = printed
      .filter((one) => one !== chosen)
      .map(({ document }) => {
        const { place, printed: day, revision } = keptCard(book, document).identity;
        return { document, place, printed: day, revision };
      });
    return { card: keptCard(book, chosen.document), document: chosen.document, paper: chosen.paper, others };
  }
  if (wanted.document !== undefined)
    throw new InputProblem([problem('not-found', 'This book has printed no such card.')]);
  const sheet = RETURN.exec(wanted.test)?.[1];
  if (sheet !== undefined) return returnInHand(desk, bookId, Number(sheet));
  const input = await cardInput(desk, bookId, { selection: { kind: 'card', id: wanted.test }, paper: 'half-letter' });
  const { cards } = await previewCards(input);
  // the readings stand on the last of a test's cards
  const card = cards.at(-1);
  if (!card) throw new InputProblem([problem('not-found', `The program has no card for the test ${wanted.test}.`)]);
  return { card, document: null, paper: 'half-letter', others: [] };
}

/** The return sheet of an outing, as its packet prints it. */
async function returnInHand(desk: Desk, bookId: string, number: number): Promise<CardInHand> {
  const { airplane, program } = await planOf(desk, bookId);
  const outing = program.outings.find((one) => one.number === number);
  if (!outing) throw new InputProblem([problem('not-found', `The program has no outing ${number}.`)]);
  const name = outingName(outing, program);
  const page = returnSheet(airplane, outing.kind === 'flight', {
    registration: airplane.registration,
    airplane: airplane.name,
    invented: airplane.invented,
    place: name,
    outing: name,
    revision: `rev ${airplaneOf(desk.shelf.open(bookId)).revision}`,
    printed: 'with the packet',
  });
  return { card: returnCard(page, number), document: null, paper: 'half-letter', others: [] };
}
