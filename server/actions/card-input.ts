/** What the cards of a book are filled from: its airplane, its program, the results accepted so far. */
import type { Paper, Selection } from '../../analysis/cards/index.ts';
import type { PrintOptions } from '../../templates/cards/options.ts';
import { airplaneOf } from '../book/read-state.ts';
import type { Desk } from '../desk.ts';
import { planOfBook } from './book-plan.ts';
import { type FlownWanted, flownOfBook } from './flown-of-book.ts';
import type { PrintCardsInput } from './print-cards.ts';

export interface CardsWanted {
  selection: Selection;
  paper: Paper;
  options?: PrintOptions | undefined;
  /** briefing, emergency and return sheets round the cards of one outing */
  packet?: boolean | undefined;
  /** the card as it was flown, in place of a blank one */
  flown?: FlownWanted | undefined;
}

/** @throws InputProblem when the stored description no longer fits the schema */
export async function cardInput(
  desk: Desk,
  bookId: string,
  { selection, paper, options, packet, flown }: CardsWanted,
): Promise<PrintCardsInput> {
  const book = desk.shelf.open(bookId);
  const { airplane, program, options: made, ownTests } = await planOfBook(book);
  return {
    airplane,
    revision: airplaneOf(book).revision,
    selection,
    paper,
    program,
    ...(ownTests.length > 0 ? { ownTests } : {}),
    known: made.known ?? {},
    day: desk.now(),
    ...(options ? { options } : {}),
    ...(packet ? { packet } : {}),
    ...(flown ? { cards: [await flownOfBook(desk, bookId, flown)] } : {}),
  };
}
