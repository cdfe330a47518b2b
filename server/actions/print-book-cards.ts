/** Print cards of a book's program, and note in the journal which were printed from which revision. */
import type { By } from '../book/journal.ts';
import type { Desk } from '../desk.ts';
import type { PrintRequest } from '../printing/print.ts';
import { type CardsWanted, cardInput } from './card-input.ts';
import { notePaper } from './note-paper.ts';
import { notePrinting } from './note-printing.ts';
import { type PreviewedCards, type PrintedCards, previewCards, printCards } from './print-cards.ts';

/** @throws InputProblem where there is no such card, no browser, or too many prints wait */
export async function printBookCards(
  desk: Desk,
  bookId: string,
  wanted: CardsWanted,
  by: By = {},
  request: PrintRequest = {},
): Promise<PrintedCards> {
  const input = await cardInput(desk, bookId, wanted);
  const printed = await printCards(input, request);
  // a flown card is a record of what was done, not paper for the next flight
  if (wanted.flown) return printed;
  notePrinting(desk, bookId, printed.cards, wanted.paper, by);
  if (input.program) notePaper(desk, bookId, input.program, wanted.selection, by);
  return printed;
}

/** The same document for the screen; nothing is noted. */
export async function previewBookCards(desk: Desk, bookId: string, wanted: CardsWanted): Promise<PreviewedCards> {
  return previewCards(await cardInput(desk, bookId, wanted));
}
